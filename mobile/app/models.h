// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <utility>

#include "app.h"
#include "charts.h"
#include "confirmer.h"
#include "cue.h"
#include "exporter.h"
#include "job_runner.h"
#include "joiner.h"
#include "level.h"
#include "live.h"
#include "profiles.h"
#include "scanner.h"
#include "syncer.h"
#include "yard.h"

namespace hingepin::mobile {

/// Everything that QML asks for by name; outlives the QML engine.
struct Models {
  explicit Models(Start start)
      : app(std::move(start)),
        job(app),
        joiner(app),
        live(app, job),
        charts(app, job),
        confirmer(app),
        level(app),
        cue(app),
        exporter(app),
        profiles(app),
        scanner(nullptr),
        syncer(app),
        yard(app) {}
  App app;
  JobRunner job;
  Joiner joiner;
  Live live;
  Charts charts;
  Confirmer confirmer;
  Level level;
  Cue cue;
  Exporter exporter;
  Profiles profiles;
  Scanner scanner;
  Syncer syncer;
  Yard yard;
};

}  // namespace hingepin::mobile
