// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "engine/base/error.h"
#include "engine/records/keys.h"
#include "engine/session/edge.h"
#include "engine/session/moment.h"
#include "engine/store/store.h"

/// An invented yard to look round in: units in every state, months of history. All of it was made by real
/// jobs and is marked as practice.
namespace hingepin::session {

/// Somebody of the demo yard. The names are invented and say so.
struct DemoPerson {
  std::string name;
  std::string role;
};
/// Whom a demo yard needs keys for, in this order: technician, operator, supervisor, safety-lead, yard-clerk.
[[nodiscard]] const std::vector<DemoPerson>& demoPeople();

struct DemoYard {
  const records::SecretKey& yard_key;
  std::vector<const records::SecretKey*> keys;  ///< one for each of demoPeople()
  std::string installation;                     ///< thumbprint of the key of the installation
  std::string epoch;
  std::string engine;           ///< program and version, for the records
  std::string language = "en";  ///< of the words that were shown
  Moment now;                   ///< the history ends here
  std::string device = "demo phone";
};

/// Told now and then; says false to give up.
using Progress = std::function<bool(int done, int total)>;

/// Fills an empty store, all of it or nothing.
/// Errors: InvalidInput "demo-store-not-empty", "demo-cancelled"; those of the jobs and of the store.
[[nodiscard]] Expected<void> fillDemoYard(store::Store& store, const DemoYard& yard,
                                          const records::FillBytes& fill, const Edge& edge,
                                          const Progress& progress = {});

}  // namespace hingepin::session
