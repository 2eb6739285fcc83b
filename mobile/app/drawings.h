// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QVariantMap>
#include <optional>

#include "engine/session/job.h"
#include "engine/session/machine_drawing.h"

/// What QML draws of a machine from its side.
namespace hingepin::mobile {

/// The unit and the attachment of a job; nothing where they can't be read, or there is none.
[[nodiscard]] std::optional<calibration::LoaderUnit> unitOf(const session::OpenJob& job);
[[nodiscard]] std::optional<calibration::Attachment> fittedOf(const session::OpenJob& job);

/// Pins, bucket and weigh window as [forward, up] in m; `known`: whether the pins are the unit's own.
[[nodiscard]] QVariantMap machineMap(const session::MachineDrawing& drawing);

/// Of a step that measures the linkage: `machine` as it stands now, `from`, `to`, `helpers` (lines), `slope`
/// (the angle of from -> to is meant, not its length). Empty for any other step.
[[nodiscard]] QVariantMap measureMap(const session::OpenJob& job, const procedures::Step& step);

}  // namespace hingepin::mobile
