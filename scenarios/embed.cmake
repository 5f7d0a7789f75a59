# Turns the demo books into one C++ source, so that `start --scenario` needs no data path.
#   cmake -DOUTPUT=file.cpp -DROOT=scenarios "-DFILES=northern/book.yaml;..." -P embed.cmake
set(text "#include \"cli/scenarios.h\"\n\nnamespace pluckbook::cli {\n\n")
set(list "")
set(number 0)
foreach(file IN LISTS FILES)
  file(READ ${ROOT}/${file} content HEX)
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," content "${content}")
  string(REGEX MATCH "^[^/]+" scenario ${file})
  string(FIND ${file} "/" slash)
  math(EXPR after "${slash} + 1")
  string(SUBSTRING ${file} ${after} -1 path)
  string(APPEND text "static constexpr char file_${number}[] = {${content}'\\0'};\n")
  string(APPEND list "      {\"${scenario}\", \"${path}\", {file_${number}, sizeof file_${number} - 1}},\n")
  math(EXPR number "${number} + 1")
endforeach()
string(APPEND text "\nconst std::vector<ScenarioFile>& scenario_files() {\n"
  "  static const std::vector<ScenarioFile> files = {\n${list}  };\n  return files;\n}\n\n"
  "}  // namespace pluckbook::cli\n")
file(WRITE ${OUTPUT} "${text}")
