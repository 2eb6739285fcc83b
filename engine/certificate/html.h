// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "engine/certificate/certificate.h"

namespace hingepin::certificate {

/// A certificate as one HTML file that needs nothing beside it: printable on A4 and Letter, readable on a
/// phone, right to left where the language is. Each number stands in an element whose data attributes say it
/// to a program: data-figure (the name of figuresOf), data-value, data-unit (UCUM), data-u and data-k where
/// it has an uncertainty, data-readings or data-entry: where it comes from.
[[nodiscard]] std::string renderHtml(const Certificate& certificate, const Voice& voice);

/// What a label at the monitor or a tag on the machine says.
struct Card {
  std::string headline;  ///< in large letters
  bool warns = false;    ///< a tag: larger, with a sign
  struct Row {
    std::string label;
    std::string value;
    std::string note{};  ///< smaller, below it
  };
  std::vector<Row> rows{};
  std::string qr_text{};
};

/// A card as one HTML file that needs nothing beside it.
[[nodiscard]] std::string renderCard(const Card& card, const Voice& voice);

}  // namespace hingepin::certificate
