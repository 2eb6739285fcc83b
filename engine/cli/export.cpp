// SPDX-License-Identifier: Apache-2.0
#include "engine/cli/export.h"

#include "engine/cli/commands.h"

namespace hingepin::cli {

int exportStore(const Common& common, const std::string&) {
  return complain({ErrorKind::InvalidInput, {"command-line", {{"detail", std::string("Not yet.")}}}, {}},
                  common.system);
}
int importStore(const Common& common, const std::string&) { return exportStore(common, ""); }

}  // namespace hingepin::cli
