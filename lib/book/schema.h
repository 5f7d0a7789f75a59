// schema.h - what may stand in each file of a book, from the very tables that read it: for a JSON
// Schema, for help, and for a test that no key goes undescribed.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace pluckbook {

/// What a plain number may be.
struct Bounds {
  double low = 0, high = 0;
};

struct KeyFact {
  std::string name;
  std::string kind;     // "weight", "date", "choice", "list", "quote", ...
  std::string example;  // how a value of it is written: "1250 lb"
  bool required = false;
  std::vector<std::string> choices;  // of a "choice"
  std::vector<KeyFact> inner;        // the keys of the record, or of the list's records, it holds
  std::optional<Bounds> bounds;      // of a number without a unit
};

/// "book.yaml", "pastures.yaml", ..., "samples.yaml" (for samples/YEAR/PASTURE.yaml).
std::vector<std::string> schema_files();

/// The keys of the file's records; book.yaml is one record, all others are lists of them. Empty
/// for a file that is none of these.
std::vector<KeyFact> keys_of_file(const std::string& file);

}  // namespace pluckbook
