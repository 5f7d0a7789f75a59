// yaml_nodes FOLDER [raw]: the YAML files under a folder, each loaded plainly by yaml-cpp into its
// nodes; with `raw`, their bytes alone. Prints how many there were, so that nothing is left out.
#include <yaml-cpp/yaml.h>

#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>

int main(int count, char** words) {
  if (count < 2) return 2;
  const bool raw = count > 2;
  std::size_t items = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(words[1])) {
    if (entry.path().extension() != ".yaml") continue;
    if (raw) {
      std::ifstream file(entry.path(), std::ios::binary);
      items += std::string(std::istreambuf_iterator<char>(file), {}).size();
    } else {
      items += YAML::LoadFile(entry.path().string()).size();
    }
  }
  std::cout << items << "\n";
}
