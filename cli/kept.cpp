#include "cli/kept.h"

#include <fmt/format.h>

namespace pluckbook::cli {

Answer kept(const Written& written, const std::string& what, const std::string& next) {
  Answer answer;
  answer.text = fmt::format("{}\n{}:{}\nnext: {}\n", what, written.file, written.line, next);
  answer.warnings = written.warnings;
  return answer;
}

}  // namespace pluckbook::cli
