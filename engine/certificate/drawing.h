// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "engine/certificate/certificate.h"

/// What a certificate shows, as SVG.
namespace hingepin::certificate {

/// Errors of indication over the reference, each with its expanded uncertainty, within the limits. "" where
/// there is no result.
[[nodiscard]] std::string errorPlot(const Certificate& certificate, const Voice& voice);

/// A step of 1, 2 or 5 times a power of ten that divides a range, > 0, into about so many parts.
[[nodiscard]] double niceStep(double range, int parts);

/// The decimals that multiples of such a step need.
[[nodiscard]] int decimalsOfStep(double step);

/// A QR code (ISO/IEC 18004, level M) with its quiet zone.
[[nodiscard]] std::string qrDrawing(std::string_view text);

}  // namespace hingepin::certificate
