// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QVariantList>
#include <QVariantMap>
#include <vector>

#include "engine/session/document.h"
#include "text.h"

namespace hingepin::mobile {

/// Rows of a document for QML: label, value, note, verdict.
[[nodiscard]] inline QVariantList rowsOf(const std::vector<session::DocumentRow>& rows) {
  QVariantList list;
  for (const session::DocumentRow& row : rows) {
    list.append(QVariantMap{{QStringLiteral("label"), qt(row.label)},
                            {QStringLiteral("value"), qt(row.value)},
                            {QStringLiteral("note"), qt(row.note)},
                            {QStringLiteral("verdict"), qt(row.verdict)}});
  }
  return list;
}

}  // namespace hingepin::mobile
