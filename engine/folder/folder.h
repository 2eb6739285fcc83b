// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/records/keys.h"
#include "engine/session/edge.h"
#include "engine/session/moment.h"
#include "engine/store/store.h"

/// The store folder: store.db, installation.json with what no backup may hold, and keys/.
namespace hingepin::folder {

struct Folder {
  std::string path;
  store::Store store;
  std::string epoch;
  std::string installation;  ///< thumbprint of the first key that was made here; "" before that
};

/// Opens a store folder, and makes it where there is none.
/// Errors: InvalidInput "store-folder-missing" when no folder is named, "installation-malformed"; those of
/// Store::open and of the files.
[[nodiscard]] Expected<Folder> openFolder(const std::string& path);

/// A key by its name here.
struct NamedKey {
  std::string name;
  records::PublicKey key;
};

/// Makes a key, wraps it with the passphrase at this cost, and keeps it. Errors: InvalidInput
/// "key-name-malformed", "key-there-already"; those of wrapKey and of the files.
[[nodiscard]] Expected<NamedKey> makeKey(Folder& folder, const std::string& name,
                                         const std::string& passphrase, records::PassphraseCost cost = {});
/// In the order of their names. Errors: those of readPublicKey and of the files.
[[nodiscard]] Expected<std::vector<NamedKey>> keysOf(const Folder& folder);
/// Errors: NotFound "key-not-here"; those of unwrapKey.
[[nodiscard]] Expected<records::SecretKey> openKey(const Folder& folder, const std::string& name,
                                                   const std::string& passphrase);

/// The same, to seal with in this installation. Errors: InvalidInput "installation-without-key" in a folder
/// in which no key was made; those of openKey.
[[nodiscard]] Expected<records::SecretKey> openSealingKey(const Folder& folder, const std::string& name,
                                                          const std::string& passphrase);

/// Removes all keys, where no yard was accepted yet: nothing was signed with them. The installation keeps its
/// name. Errors: InvalidInput "join-already"; IoFailed "file-write-failed"; those of keysOf.
[[nodiscard]] Expected<void> dropKeys(const Folder& folder);

/// From the file, else from HINGEPIN_PASSPHRASE; never from the command line, which others can read.
/// Errors: InvalidInput "passphrase-missing"; those of the file.
[[nodiscard]] Expected<std::string> readPassphrase(const std::string& file);

/// The files that an import or a verification reads. Errors: those of the files.
[[nodiscard]] Expected<std::vector<std::string>> filesIn(const std::string& folder,
                                                         const std::string& extension);

/// Random bytes of the operating system.
void fillBytes(std::span<std::uint8_t> bytes);

/// This computer's clocks: its start is the phone's start.
[[nodiscard]] session::Moment momentOfComputer();

/// The readers and writers of engine/formats.
[[nodiscard]] const session::Edge& edge();

}  // namespace hingepin::folder
