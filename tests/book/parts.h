// parts.h - one file of a book read by its name, from memory.
#pragma once

#include <string_view>

#include "book/read_parts.h"

namespace pluckbook {

/// `file` is "herds.yaml" and so on; samples of the pasture `north` for any other.
inline void read_part(FileReading& reading, const YamlNode& root, std::string_view file,
                      Book& book) {
  if (file == "book.yaml") return read_operation(reading, root, book);
  if (file == "pastures.yaml") return read_pastures(reading, root, book);
  if (file == "herds.yaml") return read_herds(reading, root, book);
  if (file == "grazing.yaml") return read_grazing(reading, root, book);
  if (file == "feeds.yaml") return read_feeds(reading, root, book);
  if (file == "condition.yaml") return read_condition(reading, root, book);
  if (file == "events.yaml") return read_events(reading, root, book);
  if (file == "layouts.yaml") return read_layouts(reading, root, book);
  book.bags = read_samples(reading, root, "north", book);
}

}  // namespace pluckbook
