// book_folder.h - a small good book in a folder of its own, for tests that spoil one file of it.
#pragma once

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace pluckbook {

class BookFolder {
 public:
  BookFolder() : path_(std::filesystem::temp_directory_path() / unique_name()) {
    write("book.yaml",
          "pluckbook: 1\n"
          "name: Alder Bench\n"
          "units: us\n"
          "currency: USD\n"
          "cover: 80\n"
          "trip: 18.00\n"
          "labs: [{id: county, name: County Forage Lab, days: 10}]\n");
    write("pastures.yaml",
          "- {id: north, name: North, forage: northern mixed-grass, area: 640 acre,\n"
          "   terrain: rolling, green_up: 04-20, trip: 25.00}\n"
          "- {id: meadow, forage: northern mixed-grass}\n");
    write("herds.yaml",
          "- id: cows\n"
          "  head: 140\n"
          "  class: mature cow\n"
          "  weight: 1250 lb\n"
          "  peak_milk: 22 lb/day\n"
          "  calving: {first: 2026-03-10, share_by_21_days: [62, 24, 10, 4]}\n"
          "  weaning: 2026-10-15\n");
    write("grazing.yaml", "- {date: 2026-05-10, herd: cows, pasture: north}\n");
    write("feeds.yaml",
          "- id: cube\n"
          "  like: range cube 20\n"
          "  quote: {price: 355 USD/ton, date: 2026-08-01, freight: 12 USD/ton}\n");
    write(
        "samples/2026/north.yaml",
        "# North, 2026\n"
        "- bag: 26-north-01\n"
        "  plucked: 2026-06-12\n"
        "  stops: 22\n"
        "  sent: {date: 2026-06-15, lab: county}\n"
        "  results:\n"
        "    - {received: 2026-06-25, basis: dry matter, dm: 92.1, cp: 10.4, adf: 36.2, ndf: 61}\n"
        "# the second walk\n"
        "- bag: 26-north-02\n"
        "  plucked: 2026-07-06\n");
  }
  ~BookFolder() { std::filesystem::remove_all(path_); }
  BookFolder(const BookFolder&) = delete;
  BookFolder& operator=(const BookFolder&) = delete;

  const std::filesystem::path& path() const { return path_; }

  void write(const std::string& name, const std::string& text) const {
    std::filesystem::create_directories((path_ / name).parent_path());
    std::ofstream(path_ / name, std::ios::binary) << text;
  }
  std::string text(const std::string& name) const {
    std::ifstream stream(path_ / name, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
  }

 private:
  static std::string unique_name() {
    static int count = 0;
    return "pluckbook-test-" + std::to_string(::getpid()) + "-" + std::to_string(++count);
  }
  std::filesystem::path path_;
};

}  // namespace pluckbook
