// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "engine/calibration/job.h"
#include "tests/engine/linkage/machines.h"

namespace hingepin::calibration {

/// An attachment of which only the points are known that stops are told by.
inline Attachment attachmentOf(const char* id, const linkage::Pin& heel, const linkage::Pin& cutting_edge) {
  Attachment made;
  made.id = id;
  made.heel = heel;
  made.cutting_edge = cutting_edge;
  return made;
}

}  // namespace hingepin::calibration
