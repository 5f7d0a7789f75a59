// The smallest program that links the libraries of ours: what it takes to begin at all.
#include <iostream>

int main() {
  std::cout << "hello\n";
}
