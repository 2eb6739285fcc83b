// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <string_view>
#include <utility>

namespace hingepin::reference {

// A double by its IEEE 754 bits, and its text.
// Source: RFC 8785 Appendix B. From memory; each recomputed by an independent shortest-round-trip formatter.
inline constexpr std::array<std::pair<std::uint64_t, std::string_view>, 24> kCanonicalNumbers{{
    {0x0000000000000000, "0"},
    {0x8000000000000000, "0"},
    {0x0000000000000001, "5e-324"},
    {0x8000000000000001, "-5e-324"},
    {0x7fefffffffffffff, "1.7976931348623157e+308"},
    {0xffefffffffffffff, "-1.7976931348623157e+308"},
    {0x4340000000000000, "9007199254740992"},
    {0xc340000000000000, "-9007199254740992"},
    {0x4430000000000000, "295147905179352830000"},
    {0x44b52d02c7e14af5, "9.999999999999997e+22"},
    {0x44b52d02c7e14af6, "1e+23"},
    {0x44b52d02c7e14af7, "1.0000000000000001e+23"},
    {0x444b1ae4d6e2ef4e, "999999999999999700000"},
    {0x444b1ae4d6e2ef4f, "999999999999999900000"},
    {0x444b1ae4d6e2ef50, "1e+21"},
    {0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7"},
    {0x3eb0c6f7a0b5ed8d, "0.000001"},
    {0x41b3de4355555553, "333333333.3333332"},
    {0x41b3de4355555554, "333333333.33333325"},
    {0x41b3de4355555555, "333333333.3333333"},
    {0x41b3de4355555556, "333333333.3333334"},
    {0x41b3de4355555557, "333333333.33333343"},
    {0xbecbf647612f3696, "-0.0000033333333333333333"},
    {0x43143ff3c1cb0959, "1424953923781206.2"},
}};

// SHA-256 of the first lines of a deterministic sequence of doubles, each line "bits in hexadecimal,text\n".
// Source: cyberphone/json-canonicalization, test data, as published there.
inline constexpr std::array<std::pair<std::size_t, std::string_view>, 3> kCanonicalNumberHashes{{
    {1000, "be18b62b6f69cdab33a7e0dae0d9cfa869fda80ddc712221570f9f40a5878687"},
    {10000, "b9f7a8e75ef22a835685a52ccba7f7d6bdc99e34b010992cbc5864cd12be6892"},
    {100000, "22776e6d4b49fa294a0d0f349268e5c28808fe7e0cb2bcbe28f63894e494d4c7"},
}};

// Ed25519, in hexadecimal.
// Source: RFC 8032 section 7.1, tests 1 to 3.
struct Ed25519Vector {
  std::string_view secret, public_key, message, signature;
};
inline constexpr std::array<Ed25519Vector, 3> kEd25519{{
    {"9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
     "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a", "",
     "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f"
     "0595b"
     "be24655141438e7a100b"},
    {"4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
     "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c", "72",
     "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2ea"
     "eb430"
     "2aeeb00d291612bb0c00"},
    {"c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
     "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025", "af82",
     "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e"
     "9716e"
     "d28dc027beceea1ec40a"},
}};

// The key of RFC 8032 test 1 as a JWK, its thumbprint, and a signature by it.
// Source: RFC 8037 Appendix A.1 to A.4 (thumbprint by RFC 7638). From memory; a wrong digit could not pass,
// since thumbprint and signature are computed from the rest.
inline constexpr std::string_view kJwkX = "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo";
inline constexpr std::string_view kJwkThumbprint = "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k";
inline constexpr std::string_view kJwsSigningInput =
    "eyJhbGciOiJFZERTQSJ9.RXhhbXBsZSBvZiBFZDI1NTE5IHNpZ25pbmc";
inline constexpr std::string_view kJwsSignature =
    "hgyY0il_MGCjP0JzlnLWG1PPOt7-09PGcvMg3AIbQR6dWbhijcNR4ki4iylGjg5BhVsPt9g7sVvpAr_MuM0KAg";

// Source: RFC 4648 section 10, without the padding (section 3.2).
inline constexpr std::array<std::pair<std::string_view, std::string_view>, 7> kBase64{{
    {"", ""},
    {"f", "Zg"},
    {"fo", "Zm8"},
    {"foo", "Zm9v"},
    {"foob", "Zm9vYg"},
    {"fooba", "Zm9vYmE"},
    {"foobar", "Zm9vYmFy"},
}};

// SHA-256 of "abc". Source: FIPS 180-4 examples. From memory.
inline constexpr std::string_view kSha256OfAbc =
    "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

// HMAC-SHA-256 of "Hi There" with a key of twenty bytes 0b. Source: RFC 4231 test case 1. From memory.
inline constexpr std::string_view kHmacOfHiThere =
    "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7";

}  // namespace hingepin::reference
