// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "engine/far_side/http.h"
#include "engine/sync/remote.h"

namespace hingepin::far_side {

/// A folder of a WebDAV share (RFC 4918) as far side. Who may in is the client's to say.
/// @param url of the folder, without '/' at its end
[[nodiscard]] sync::Remote webdav(HttpClient client, std::string url);

}  // namespace hingepin::far_side
