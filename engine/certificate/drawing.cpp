// SPDX-License-Identifier: Apache-2.0
#include "engine/certificate/drawing.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <qrcodegen.hpp>

#include "engine/certificate/markup.h"

namespace hingepin::certificate {
namespace {

constexpr double kWidth = 720;
constexpr double kHeight = 300;
constexpr double kLeft = 92;
constexpr double kRight = 20;
constexpr double kTop = 34;
constexpr double kBottom = 46;
constexpr double kFineness = 3;  // for those who draw it as dots before they print it
constexpr double kBeside = 11;   // between results of one reference

/// One result in the units of the reader.
struct Point {
  When when;
  double reference;
  double error;
  double uncertainty;
  double limit;  // 0: none
};

struct Scale {
  double x_most, y_most;
  [[nodiscard]] double x(double value) const { return kLeft + value / x_most * (kWidth - kLeft - kRight); }
  [[nodiscard]] double y(double value) const {
    const double middle = (kTop + kHeight - kBottom) / 2;
    return middle - value / y_most * (kHeight - kTop - kBottom) / 2;
  }
};

std::string text(double x, double y, const char* anchor, std::string_view words, const char* more = "") {
  return fmt::format("<text x='{:.1f}' y='{:.1f}' text-anchor='{}'{}>{}</text>", x, y, anchor, more,
                     escaped(words));
}
std::string line(double x1, double y1, double x2, double y2, const char* style) {
  return fmt::format("<line x1='{:.1f}' y1='{:.1f}' x2='{:.1f}' y2='{:.1f}' {}/>", x1, y1, x2, y2, style);
}

/// As found: an open circle. As left: a filled square.
std::string mark(When when, double x, double y) {
  return when == When::AsFound
             ? fmt::format(
                   "<circle cx='{:.1f}' cy='{:.1f}' r='4.5' fill='#ffffff' stroke='#8a4b00' "
                   "stroke-width='2'/>",
                   x, y)
             : fmt::format("<rect x='{:.1f}' y='{:.1f}' width='9' height='9' fill='#003c78'/>", x - 4.5,
                           y - 4.5);
}

std::string limitBand(const std::vector<Point>& points, const Scale& scale) {
  std::map<double, double> limits;
  for (const Point& point : points) {
    if (point.limit > 0) limits.emplace(point.reference, point.limit);
  }
  if (limits.empty()) return "";
  // Beyond the first and the last reference nothing is judged: the band only looks better wide.
  limits.emplace(std::max(0.0, limits.begin()->first - 0.06 * scale.x_most), limits.begin()->second);
  limits.emplace(std::min(scale.x_most, limits.rbegin()->first + 0.06 * scale.x_most),
                 limits.rbegin()->second);
  std::string upper;
  std::string lower;
  for (const auto& [reference, limit] : limits) {
    upper += fmt::format("{:.1f},{:.1f} ", scale.x(reference), scale.y(limit));
    lower.insert(0, fmt::format("{:.1f},{:.1f} ", scale.x(reference), scale.y(-limit)));
  }
  return "<polygon points='" + upper + lower + "' fill='#e3efe3'/>" + "<polyline points='" + upper +
         "' class='limit'/><polyline points='" + lower + "' class='limit'/>";
}

std::string axes(const Scale& scale, const std::string& ucum, const Voice& voice) {
  std::string svg;
  const double y_step = niceStep(2 * scale.y_most, 6);
  for (double tick = -std::floor(scale.y_most / y_step) * y_step; tick <= scale.y_most * 1.0001;
       tick += y_step) {
    const bool zero = std::abs(tick) < 1e-9 * y_step;
    svg += line(kLeft, scale.y(tick), kWidth - kRight, scale.y(tick),
                zero ? "stroke='#000000'" : "stroke='#cccccc'");
    svg += text(kLeft - 6, scale.y(tick) + 4, "end",
                voice.show({zero ? 0 : tick, ucum, decimalsOfStep(y_step)}));
  }
  const double x_step = niceStep(scale.x_most, 6);
  for (double tick = 0; tick <= scale.x_most * 1.0001; tick += x_step) {
    svg += line(scale.x(tick), kHeight - kBottom, scale.x(tick), kHeight - kBottom + 5, "stroke='#000000'");
    svg += text(scale.x(tick), kHeight - kBottom + 18, "middle",
                voice.show({tick, ucum, decimalsOfStep(x_step)}));
  }
  svg += line(kLeft, kTop, kLeft, kHeight - kBottom, "stroke='#000000'");
  return svg +
         text((kLeft + kWidth - kRight) / 2, kHeight - 8, "middle", voice.say({"certificate-reference", {}}));
}

}  // namespace

double niceStep(double range, int parts) {
  const double rough = range / parts;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  for (const double factor : {1.0, 2.0, 5.0}) {
    if (rough <= factor * power) return factor * power;
  }
  return 10.0 * power;
}

int decimalsOfStep(double step) {
  return std::max(0, -static_cast<int>(std::floor(std::log10(step) + 1e-9)));
}

std::string errorPlot(const Certificate& certificate, const Voice& voice) {
  std::vector<Point> points;
  std::string ucum = "kg";
  Scale scale{0, 0};
  for (const Proof& proof : certificate.proofs) {
    for (const Result& result : proof.results) {
      const Amount reference = inSystem(result.reference.amount, voice.system);
      const double per_unit =
          result.reference.amount.value == 0 ? 1 : reference.value / result.reference.amount.value;
      ucum = reference.ucum;
      points.push_back({.when = proof.when,
                        .reference = reference.value,
                        .error = result.error.amount.value * per_unit,
                        .uncertainty = result.error.expanded_uncertainty.value_or(0) * per_unit,
                        .limit = result.limit ? result.limit->amount.value * per_unit : 0});
      const Point& point = points.back();
      scale.x_most = std::max(scale.x_most, 1.12 * point.reference);
      scale.y_most =
          std::max({scale.y_most, 1.15 * (std::abs(point.error) + point.uncertainty), 1.15 * point.limit});
    }
  }
  if (points.empty() || !(scale.x_most > 0)) return "";
  if (!(scale.y_most > 0)) scale.y_most = 1;

  std::string svg = fmt::format(
      "<svg xmlns='http://www.w3.org/2000/svg' width='{2:.0f}' height='{3:.0f}' viewBox='0 0 {0:.0f} "
      "{1:.0f}' "
      "font-family='sans-serif' font-size='12'><style>.limit{{fill:none;stroke:#2b6b2b;stroke-dasharray:6 "
      "3}}</style><rect width='{0:.0f}' height='{1:.0f}' fill='#ffffff'/>",
      kWidth, kHeight, kFineness * kWidth, kFineness * kHeight);
  svg += limitBand(points, scale) + axes(scale, ucum, voice);
  std::map<double, int> all;
  std::map<double, int> drawn;
  for (const Point& point : points) ++all[point.reference];
  for (const Point& point : points) {
    const double beside = (drawn[point.reference]++ - (all[point.reference] - 1) / 2.0) * kBeside;
    const double x = scale.x(point.reference) + beside;
    const double high = scale.y(point.error + point.uncertainty);
    const double low = scale.y(point.error - point.uncertainty);
    for (const double end : {high, low}) svg += line(x - 4, end, x + 4, end, "stroke='#000000'");
    svg += line(x, high, x, low, "stroke='#000000'") + mark(point.when, x, scale.y(point.error));
  }
  double x = kLeft;
  for (const When when : {When::AsFound, When::AsLeft}) {
    if (std::ranges::find(points, when, &Point::when) == points.end()) continue;
    svg += mark(when, x + 6, 14) +
           text(x + 18, 18, "start",
                voice.say({when == When::AsFound ? "document-as-found" : "certificate-as-left", {}}));
    x += 150;
  }
  svg += line(x, 14, x + 16, 14, "class='limit'") +
         text(x + 22, 18, "start", voice.say({"certificate-limit", {}}));
  svg += text(kWidth - kRight, 18, "end", voice.say({"certificate-bars", {}}));
  return svg + "</svg>";
}

std::string qrDrawing(std::string_view text) {
  constexpr int kQuiet = 4;  // modules of white around it, ISO/IEC 18004
  // Level M holds 2331 bytes in its largest version (ISO/IEC 18004, table 7).
  const qrcodegen::QrCode code = qrcodegen::QrCode::encodeText(std::string(text.substr(0, 2331)).c_str(),
                                                               qrcodegen::QrCode::Ecc::MEDIUM);
  const int size = code.getSize() + 2 * kQuiet;
  std::string path;
  for (int y = 0; y < code.getSize(); ++y) {
    for (int x = 0; x < code.getSize(); ++x) {
      if (code.getModule(x, y)) path += fmt::format("M{} {}h1v1h-1z", x + kQuiet, y + kQuiet);
    }
  }
  return fmt::format(
      "<svg xmlns='http://www.w3.org/2000/svg' width='{1}' height='{1}' viewBox='0 0 {0} {0}' "
      "shape-rendering='crispEdges'><rect width='{0}' height='{0}' fill='#ffffff'/><path d='{2}'/></svg>",
      size, size * 12, path);
}

}  // namespace hingepin::certificate
