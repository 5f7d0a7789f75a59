// first_lines.h - the line to write for a record the book does not hold yet: shown where one is
// missing, and standing as a comment in the files of a new book.
#pragma once

#include <string>
#include <string_view>

namespace pluckbook {

std::string pasture_line(std::string_view id);
std::string herd_line(std::string_view id);
std::string move_line(std::string_view date, std::string_view herd, std::string_view pasture);
std::string feed_line(std::string_view id, std::string_view currency);
/// The value of the key 'labs' of book.yaml.
std::string labs_line(std::string_view id);

/// "add to herds.yaml:  - {id: ...}", for a "pasture", "herd", "feed" or "laboratory"; where ids
/// of another kind stand, nothing.
std::string line_to_add(std::string_view kind, std::string_view id, std::string_view currency);

}  // namespace pluckbook
