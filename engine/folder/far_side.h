// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "engine/base/error.h"
#include "engine/folder/folder.h"
#include "engine/sync/exchange.h"
#include "engine/sync/parcel.h"
#include "engine/sync/remote.h"

/// What a store folder knows of its far side, and as what it sends: far-side.json, device.json.
namespace hingepin::folder {

/// Where a far side is. The secret is never kept here.
struct FarSide {
  std::string kind;  ///< "webdav", "s3"
  std::string url;   ///< of the share's folder, or of the storage
  std::string user;  ///< or the id of the key
  std::string bucket{};
  std::string prefix{};
  std::string region{};
  /// Certificates to trust; "": those of the system. A path, or the name that keepAuthority gave; farSideOf
  /// gives a path.
  std::string ca_file{};
};

/// Errors: those of sync::checkUrl; InvalidInput "far-side-malformed" with what was expected; of the files.
[[nodiscard]] Expected<void> setFarSide(const Folder& folder, const FarSide& far_side);
/// Errors: NotFound "far-side-not-set-up"; InvalidInput "far-side-malformed"; those of the files.
[[nodiscard]] Expected<FarSide> farSideOf(const Folder& folder);

/// Keeps an authority's certificate in the store folder, since a file that was chosen may not be there again,
/// and the folder itself may move. @return its name there, as setFarSide takes it. Errors: InvalidInput
/// "authority-not-pem"; those of the files.
[[nodiscard]] Expected<std::string> keepAuthority(const Folder& folder, const std::string& chosen);

/// From the file, else from HINGEPIN_SYNC_SECRET; never from the command line, which others can read.
/// Errors: InvalidInput "far-side-secret-missing"; those of the file.
[[nodiscard]] Expected<std::string> readSecret(const std::string& file);

/// Keeps the password or secret key where no backup reaches, sealed so that only the holder of `owner` can
/// read it. Errors: those of the files.
[[nodiscard]] Expected<void> keepSecret(const Folder& folder, const std::string& secret,
                                        const records::SecretKey& owner);
/// Errors: NotFound "far-side-secret-not-kept"; those of openSecret and of the files.
[[nodiscard]] Expected<std::string> keptSecret(const Folder& folder, const records::SecretKey& owner);

/// How a far side is called where what it has shown is remembered.
[[nodiscard]] std::string addressOf(const FarSide& far_side);

/// A far side that is tried again where that may help, by this computer's clock and random bytes.
/// @param goes_on asked before each wait
[[nodiscard]] sync::Remote remoteOf(const FarSide& far_side, const std::string& secret,
                                    std::function<bool()> goes_on);

/// As what this installation sends; made where it has no device of its epoch yet.
/// Errors: InvalidInput "device-malformed"; those of the files.
[[nodiscard]] Expected<sync::Device> openDevice(const Folder& folder);
/// A new device, for an installation that was copied.
[[nodiscard]] Expected<sync::Device> makeDevice(const Folder& folder);
/// A signer vouches for the device of this installation. Errors: as openDevice.
[[nodiscard]] Expected<void> vouchForDevice(const Folder& folder, const records::SecretKey& signer);

/// One exchange by this computer's clock; where this installation turns out to be a copy, once more as a new
/// device.
/// @param address of the far side, to remember what it has shown; "": not remembered
[[nodiscard]] Expected<sync::Outcome> exchangeWith(Folder& folder, const sync::Remote& remote,
                                                   const std::string& address,
                                                   const std::function<void(const sync::Progress&)>& progress,
                                                   const std::function<bool()>& goes_on);

}  // namespace hingepin::folder
