// SPDX-License-Identifier: GPL-3.0-or-later
// FNV-1a, 64 bit, against the test vectors of its authors (draft-eastlake-fnv), as the tests of
// the open EnTT library have them too.
#include <gtest/gtest.h>

#include "plan/fingerprint.h"

namespace underlawn {

TEST(Fnv1a, GivesItsAuthorsTestValues) {
  EXPECT_EQ(fnv1a(""), 0xcbf29ce484222325ULL);
  EXPECT_EQ(fnv1a("a"), 0xaf63dc4c8601ec8cULL);
  EXPECT_EQ(fnv1a("foobar"), 0x85944171f73967e8ULL);
}

}  // namespace underlawn
