#include "advice/workings_line.h"

#include <fmt/args.h>
#include <fmt/format.h>

namespace pluckbook {

std::string filled(std::string_view formula, const std::vector<std::string>& into) {
  fmt::dynamic_format_arg_store<fmt::format_context> places;
  for (const std::string& text : into) places.push_back(text);
  return fmt::vformat(formula, places);
}

WorkingsLine line(std::string quantity, std::string formula, std::vector<Figure> inputs,
                  Figure result, std::string source) {
  std::vector<std::string> names;
  for (const Figure& input : inputs) names.push_back(input.name);
  std::string words = filled(formula, names);
  return line_in_words(std::move(quantity), std::move(words), std::move(formula), std::move(inputs),
                       std::move(result), std::move(source));
}

WorkingsLine line_in_words(std::string quantity, std::string words, std::string formula,
                           std::vector<Figure> inputs, Figure result, std::string source) {
  return {std::move(quantity), std::move(words),  std::move(formula),
          std::move(inputs),   std::move(result), std::move(source)};
}

WorkingsLine given(Figure figure, std::string source) {
  std::string quantity = figure.name;
  return {std::move(quantity), "", "", {}, std::move(figure), std::move(source)};
}

std::string sum_of_products(std::size_t products) {
  std::string sum;
  for (std::size_t i = 0; i < products; ++i)
    sum += fmt::format("{}{{{}}} x {{{}}}", i == 0 ? "" : " + ", 2 * i, 2 * i + 1);
  return sum;
}

std::string cited(const Citation& citation) {
  return fmt::format("{}; {} ({})", citation.source, citation.table, citation.status);
}

}  // namespace pluckbook
