// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tests/engine/store/samples.h"

namespace hingepin::store::samples {

/// What every golden database holds: something of each kind. Never changed, so that one made by an older
/// version can be compared.
/// @return the hashes of its blobs
inline std::vector<std::string> fillGolden(Yard& yard) {
  Store& store = yard.store;
  const std::string calibration = the(store.putBlob("{\"demo\":\"calibration\"}", "application/json"));
  const std::string photo = the(store.putBlob(std::string(20000, '\xAB'), "image/jpeg"));
  records::Phone phone{.key = records::keyOf(1)};
  the(store.beginJob(yard.job("job-1"), "first of job-1"));
  for (int event = 1; event < 30; ++event) {
    the(store.appendEvent("job-1", event, "event " + std::to_string(event) + std::string(200, 'x')));
  }
  const StoredStatement record = stored(phone.record(photo), "job-1", kUnit.id);
  the(store.endJob({.job = "job-1",
                    .phase = "done",
                    .record = record,
                    .pair = Pair{.unit = kUnit.id,
                                 .attachment = kBucket.id,
                                 .calibration = calibration,
                                 .record = record.name,
                                 .due_utc_ms = kNow + 1000,
                                 .restrictions = {"cold-oil"}},
                    .now_utc_ms = kNow}));
  Job about_unit = yard.job("job-2");
  about_unit.attachment = "";
  the(store.beginJob(about_unit, "first of job-2"));
  records::Phone second{.key = records::keyOf(2), .role = "safety-lead"};
  the(store.putStatement(stored(second.sign(record.name)), kNow + 5));
  const records::SecretKey yard_key = records::keyOf(3);
  const auto signers = the(records::sealSigners(
      {.yard_key = yard_key.publicKey(), .signers = {records::listed(phone.key, "technician")}}, yard_key));
  the(store.putSigners(signers, kNow + 6));
  the(store.acceptRoot(signers.name));
  the(store.putKnownHead({phone.key.id(), records::epochOf(9), 4, record.name}));
  Personal person{.name = "", .bytes = "A. Demo"};
  person.salt.fill(7);
  person.name = records::personalName(person.salt, person.bytes);
  the(store.putPersonal(person, kNow + 7));
  Personal gone{.name = "", .bytes = "B. Demo"};
  gone.name = records::personalName(gone.salt, gone.bytes);
  the(store.putPersonal(gone, kNow + 8));
  the(store.erasePersonal(gone.name, kNow + 9));
  return {yard.procedure, yard.words, calibration, photo};
}

}  // namespace hingepin::store::samples
