// Not compiled: an arrow that points up, for tests/floors to find.
#pragma once

#include "cow/need.h"
