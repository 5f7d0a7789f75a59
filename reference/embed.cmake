# Turns the YAML files of reference/ into one C++ source, so that the program needs no data path.
#   cmake -DOUTPUT=file.cpp "-DFILES=a.yaml;b.yaml" -P embed.cmake
set(text "#include \"published/reference_text.h\"\n\nnamespace pluckbook {\n\n")
string(APPEND text "std::optional<std::string_view> reference_text(std::string_view topic) {\n")
foreach(file IN LISTS FILES)
  get_filename_component(topic ${file} NAME_WE)
  file(READ ${file} content HEX)
  # Bytes, not a string literal: no limit on length and nothing to escape.
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "'\\\\x\\1'," content "${content}")
  string(APPEND text "  if (topic == \"${topic}\") {\n    static constexpr char bytes[] = {${content}'\\0'};\n"
    "    return std::string_view(bytes, sizeof bytes - 1);\n  }\n")
endforeach()
string(APPEND text "  return std::nullopt;\n}\n\n}  // namespace pluckbook\n")
file(WRITE ${OUTPUT} "${text}")
