// SPDX-License-Identifier: GPL-3.0-or-later
#include "exporter.h"

#include "app.h"

namespace hingepin::mobile {
namespace {
Exporter* the_exporter = nullptr;
}

Exporter::Exporter(App& app) : app_(app) { the_exporter = this; }
Exporter::~Exporter() { the_exporter = nullptr; }
Exporter* Exporter::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_exporter, QJSEngine::CppOwnership);
  return the_exporter;
}
void Exporter::tag(const QString& job) { Q_UNUSED(job) }

}  // namespace hingepin::mobile
