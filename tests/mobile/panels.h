// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <map>
#include <string>
#include <vector>

#include "engine/session/job.h"

namespace hingepin::mobile {

/// A job as it stands when a certain panel is on the screen.
struct Panel {
  QString
      name;  ///< what is asked for, of which kind of step, and in which situation: "answer-confirm-second"
  session::OpenJob job;
};

struct Panels {
  std::vector<Panel> all;  ///< one of each name, of all such the one that has most to say
  std::string refused;     ///< why a job could not be worked through; "" where all could
};

/// What jobs ask for in each of the languages: every way through every procedure of the library is walked as
/// good people would, once to its end, once with what fails, and once given up.
[[nodiscard]] std::map<std::string, Panels> panelsIn(const std::vector<std::string>& languages);

}  // namespace hingepin::mobile
