#include "cli/kept.h"

#include <fmt/format.h>

#include "report/json.h"

namespace pluckbook::cli {

std::string document_of(const Kept& kept, std::string_view command, const Written& written) {
  Json json = document(std::string(command));
  for (const auto& [key, value] : kept.about) json[key] = value;
  json["what"] = kept.what;
  json["file"] = written.file;
  json["line"] = written.line;
  json["next"] = kept.next;
  return printed(json);
}

Answer said_of(const Kept& kept, std::string_view command, const Written& written,
               const Arguments& arguments) {
  Answer answer;
  answer.text = arguments.has("json") ? document_of(kept, command, written)
                                      : fmt::format("{}\n{}:{}\nnext: {}\n", kept.what,
                                                    written.file, written.line, kept.next);
  answer.warnings = written.warnings;
  return answer;
}

}  // namespace pluckbook::cli
