package store

import "C" // for seekpos_windows.cpp
