// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QQuickWindow>
#include <QString>

#include "models.h"

namespace hingepin::mobile {

/// Shows the demo yard to nobody: opens it, visits its screens, and keeps a picture of each and a record as a
/// PDF.
/// @return 0, or 1 where a screen did not come
[[nodiscard]] int takePictures(Models& models, QQuickWindow& window, const QString& folder);

}  // namespace hingepin::mobile
