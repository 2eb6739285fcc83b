// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "engine/certificate/certificate.h"

namespace hingepin::certificate {

/// A certificate as one HTML file that needs nothing beside it: printable on A4 and Letter, readable on a
/// phone, right to left where the language is. Each number stands in an element whose data attributes say it
/// to a program: data-figure (the name of figuresOf), data-value, data-unit (UCUM), data-u and data-k where
/// it has an uncertainty, data-readings or data-entry: where it comes from.
[[nodiscard]] std::string renderHtml(const Certificate& certificate, const Voice& voice);

}  // namespace hingepin::certificate
