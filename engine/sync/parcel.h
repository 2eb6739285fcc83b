// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/records/keys.h"
#include "engine/records/verify.h"
#include "engine/store/store.h"

/// The objects of the far side: README.md describes them.
namespace hingepin::sync {

using store::ParcelPlace;

inline constexpr std::size_t kPieceBytes = 1U << 20U;       ///< evidence travels in pieces of this size
inline constexpr std::size_t kParcelBytes = 512U << 10U;    ///< a parcel that is longer takes nothing more
inline constexpr std::size_t kMostParcelBytes = 8U << 20U;  ///< longer ones are refused
inline constexpr std::int64_t kPlacesInFolder = 256;

/// As what an installation sends: a key of its own that no backup holds, made for one epoch.
struct Device {
  records::SecretKey key;
  std::string epoch;      ///< of the installation, base64url
  std::string voucher{};  ///< vouch() of a signer, "" for none
};

/// The name of a device in one epoch: lower case, for shares that don't tell capitals from small letters.
[[nodiscard]] std::string sourceOf(const records::PublicKey& device, std::string_view epoch);

/// As a device is called in messages: the first characters.
[[nodiscard]] std::string shortName(std::string_view source);

[[nodiscard]] std::string parcelFolder(std::string_view source, std::int64_t sequence);
[[nodiscard]] std::string parcelObject(const ParcelPlace& place);
/// From the last part of the name of an object in a folder of `source`.
[[nodiscard]] std::optional<ParcelPlace> parcelOfFile(std::string_view source, std::string_view file);

inline constexpr const char* kHeadsFolder = "heads";
[[nodiscard]] std::string headObject(const ParcelPlace& place);
[[nodiscard]] std::optional<ParcelPlace> headOfFile(std::string_view file);

/// Something that a device looked for and did not find whole: an object without content whose name says what.
struct Wanted {
  enum class Kind { Parcel, Blob, Personal } kind = Kind::Parcel;
  ParcelPlace parcel{};
  std::string name{};  ///< of blob or personal object
  bool operator==(const Wanted&) const = default;
};
[[nodiscard]] std::string wantedObject(const Wanted& wanted);
[[nodiscard]] std::optional<Wanted> wantedOfFile(std::string_view file);

/// Where a piece of a blob lies, by the hash of the piece, and the n-th of a personal object, whose pieces
/// must not have a hash that somebody could test a guess against.
[[nodiscard]] std::string blobPieceObject(std::string_view hash);
[[nodiscard]] std::string personalPieceObject(std::string_view name, std::int64_t number);
[[nodiscard]] std::string personalFolder(std::string_view name);

/// What one line of a parcel says.
struct Item {
  enum class Kind { Sealed, Blob, Personal, Erased } kind = Kind::Sealed;
  std::string name{};  ///< of all but sealed texts
  std::string media_type{};
  std::int64_t size = 0;
  std::vector<std::string> pieces{};  ///< names of their objects, in order
};
[[nodiscard]] std::optional<Item> readItem(std::string_view line);
[[nodiscard]] std::string blobLine(std::string_view bytes, const std::string& media_type);
/// A personal object travels as its salt and its bytes after that.
[[nodiscard]] std::string personalLine(const store::Personal& personal);

struct Manifest {
  ParcelPlace place;
  std::optional<std::string> previous{};  ///< name of the parcel before it
  std::vector<ParcelPlace> seen{};        ///< heads of other sources that its device held
  records::PublicKey device{};
  std::string epoch{};
  std::string voucher{};
};

struct SealedParcel {
  ParcelPlace place;
  std::string manifest;  ///< sealed
  std::string bytes;     ///< the object
};
/// @param body its lines, each ended by a line feed
[[nodiscard]] Expected<SealedParcel> makeParcel(const Device& device, std::int64_t sequence,
                                                const std::optional<std::string>& previous,
                                                const std::vector<ParcelPlace>& seen, std::string body);

/// The object of a parcel whose manifest and lines are known. The same bytes as its device made.
[[nodiscard]] std::string parcelBytes(std::string_view manifest, const std::vector<std::string>& lines);

struct OpenedParcel {
  Manifest manifest;
  std::string sealed;  ///< the manifest as sealed
  std::vector<std::string> lines;
};
/// Opens an object that was fetched under a name.
/// Errors: InvalidInput "parcel-altered" (seal or content don't hold), "parcel-out-of-order" (a sound one of
/// the same source, but of another place), "parcel-replaced" (a sound one, of another source).
[[nodiscard]] Expected<OpenedParcel> openParcel(std::string_view bytes, const ParcelPlace& expected);
/// Errors: "parcel-altered".
[[nodiscard]] Expected<Manifest> readManifest(std::string_view sealed);

/// A signer says that a device is one of the yard's.
[[nodiscard]] std::string vouch(const records::PublicKey& device, std::string_view epoch,
                                const records::SecretKey& signer);
/// Whether somebody on the list, whose key is not revoked, says so.
[[nodiscard]] bool isVouchedFor(const Manifest& manifest, const records::ListedKeys& keys,
                                const std::optional<records::SignersList>& list);

}  // namespace hingepin::sync
