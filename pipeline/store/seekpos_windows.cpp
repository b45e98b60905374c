// The database's library for Windows was made with a C++ library whose mbstate_t is a struct;
// in that of Debian's mingw-w64 it is an int, and one function that the library names is
// missing. It is the place where a stream of bytes is asked to move, and no stream of the
// database ever is. The answer is what the C++ standard has for a stream that cannot:
// pos_type(off_type(-1)) ([streambuf.virt.buffer]).
#include <streambuf>

struct _Mbstatet { unsigned long wide; unsigned short bytes, state; };

std::fpos<_Mbstatet> no_place(void *, std::fpos<_Mbstatet>, std::ios_base::openmode) asm(
    "_ZNSt15basic_streambufIcSt11char_traitsIcEE7seekposESt4fposI9_MbstatetESt13_Ios_Openmode");

std::fpos<_Mbstatet> no_place(void *, std::fpos<_Mbstatet>, std::ios_base::openmode) {
  return std::fpos<_Mbstatet>(std::streamoff(-1));
}
