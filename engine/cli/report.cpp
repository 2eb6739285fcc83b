// SPDX-License-Identifier: Apache-2.0
#include "engine/cli/report.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

#include "engine/calibration/calibration.h"
#include "engine/certificate/drawing.h"
#include "engine/certificate/markup.h"
#include "engine/cli/plot.h"
#include "engine/cli/words.h"
#include "engine/session/catalogue.h"
#include "engine/units/degree.h"

namespace hingepin::cli {
namespace {

using calibration::Calibration;
using calibration::LiftKind;
using certificate::escaped;

constexpr std::string_view kStyle =
    "body{font:16px/1.5 sans-serif;margin:1.5em auto;max-width:60em;padding:0 1em;color:#111}"
    ".wide{overflow-x:auto}"
    "table{border-collapse:collapse}"
    "td,th{border:1px solid #767676;padding:.25em .5em;text-align:left}"
    "figure{margin:0 0 1em}"
    "svg{display:block;width:100%;max-width:45em;height:auto}"
    "@media print{body{margin:0;max-width:none;padding:0;font-size:10pt}.wide{overflow:visible}"
    "h1,h2,h3{break-after:avoid}tr,figure{break-inside:avoid}svg{max-width:27em}}"
    "@media screen and (max-width:30em){table{font-size:.85em}}";

std::string htmlTable(const Table& table, bool with_head) {
  std::string text = "<div class=\"wide\"><table>\n";
  for (std::size_t row = 0; row < table.size(); ++row) {
    text += "<tr>";
    for (const std::string& cell : table[row]) {
      text += with_head && row == 0 ? "<th>" + escaped(cell) + "</th>" : "<td>" + escaped(cell) + "</td>";
    }
    text += "</tr>\n";
  }
  return text + "</table></div>\n";
}

std::string htmlList(const char* title, const std::vector<Message>& messages, UnitSystem system) {
  if (messages.empty()) return "";
  std::string text = fmt::format("<h2>{}</h2>\n<ul>\n", title);
  for (const Message& message : messages) text += "<li>" + escaped(words(message, system)) + "</li>\n";
  return text + "</ul>\n";
}

struct Dot {
  double x = 0.0;
  double y = 0.0;
  double half = 0.0;  ///< of the bar through it; 0: none
};
struct Curve {
  const Mark* mark;
  std::vector<Dot> dots;
  bool is_line = false;
};
/// In the units that are shown.
struct Chart {
  std::string title;
  std::string across_unit;
  std::string up_unit;
  std::vector<Curve> curves;
  std::vector<Dot> band{};  ///< half: of the band
  std::optional<std::pair<double, double>> shaded{};
};

/// The ends of a scale and its marks, about as many as wanted.
struct Scale {
  double low;
  double high;
  double step;

  Scale(double least, double most, int wanted) : low(least), high(most) {
    if (!(high - low > 1e-9 * std::max(std::abs(low), std::abs(high)))) {
      low -= 1.0;
      high += 1.0;
    }
    const double edge = 0.04 * (high - low);
    low -= edge;
    high += edge;
    step = certificate::niceStep(high - low, wanted);
  }
  [[nodiscard]] double share(double value) const { return (value - low) / (high - low); }
  [[nodiscard]] std::vector<std::pair<double, std::string>> ticks() const {
    std::vector<std::pair<double, std::string>> all;
    for (double count = std::ceil(low / step); count * step <= high; ++count) {
      // Not a zero with a minus sign.
      const double value = count == 0.0 ? 0.0 : count * step;
      all.emplace_back(value, fmt::format("{:.{}f}", value, certificate::decimalsOfStep(step)));
    }
    return all;
  }
};

/// Letters are large enough to be read where the drawing is as wide as a phone.
std::string svgOf(const Chart& chart) {
  constexpr double kLeft = 92.0;
  constexpr double kWide = 610.0;
  constexpr double kTop = 44.0;
  constexpr double kHigh = 300.0;
  const auto ends = [](const auto& each, bool across) {
    return across ? std::pair{each.x, each.x} : std::pair{each.y - each.half, each.y + each.half};
  };
  const auto scaleOf = [&](bool across, int wanted) {
    double low = HUGE_VAL;
    double high = -HUGE_VAL;
    const auto take = [&](const std::vector<Dot>& dots) {
      for (const Dot& dot : dots) {
        const auto [from, to] = ends(dot, across);
        low = std::min(low, from);
        high = std::max(high, to);
      }
    };
    for (const Curve& curve : chart.curves) take(curve.dots);
    take(chart.band);
    return Scale(low, high, wanted);
  };
  const Scale across = scaleOf(true, 6);
  const Scale up = scaleOf(false, 7);
  const auto x = [&](double value) { return kLeft + kWide * std::clamp(across.share(value), 0.0, 1.0); };
  const auto y = [&](double value) { return kTop + kHigh * (1.0 - std::clamp(up.share(value), 0.0, 1.0)); };

  std::vector<const Mark*> marks;
  for (const Curve& curve : chart.curves) {
    if (std::ranges::find(marks, curve.mark) == marks.end()) marks.push_back(curve.mark);
  }
  std::string text = fmt::format(
      "<svg viewBox=\"0 0 720 {}\" role=\"img\" aria-label=\"{}\" font-size=\"21\" fill=\"#111\">\n",
      kTop + kHigh + 44.0 + 30.0 * std::ceil(static_cast<double>(marks.size()) / 2.0), escaped(chart.title));
  if (chart.shaded) {
    const double from = x(chart.shaded->first);
    text += fmt::format("<rect x=\"{:.1f}\" y=\"{}\" width=\"{:.1f}\" height=\"{}\" fill=\"#e8e8e8\"/>\n",
                        from, kTop, x(chart.shaded->second) - from, kHigh);
  }
  for (const auto& [value, label] : up.ticks()) {
    text += fmt::format(
        "<line x1=\"{0}\" x2=\"{1}\" y1=\"{2:.1f}\" y2=\"{2:.1f}\" stroke=\"#c4c4c4\"/><text x=\"{3}\" "
        "y=\"{4:.1f}\" text-anchor=\"end\">{5}</text>\n",
        kLeft, kLeft + kWide, y(value), kLeft - 8, y(value) + 7, label);
  }
  for (const auto& [value, label] : across.ticks()) {
    text += fmt::format(
        "<line x1=\"{0:.1f}\" x2=\"{0:.1f}\" y1=\"{1}\" y2=\"{2}\" stroke=\"#767676\"/><text x=\"{0:.1f}\" "
        "y=\"{3}\" text-anchor=\"middle\">{4}</text>\n",
        x(value), kTop + kHigh, kTop + kHigh + 6, kTop + kHigh + 27, label);
  }
  text += fmt::format(
      "<text x=\"{}\" y=\"26\" text-anchor=\"end\">{}</text><text x=\"{}\" y=\"{}\" "
      "text-anchor=\"end\">{}</text>\n",
      kLeft - 8, escaped(chart.up_unit), kLeft + kWide + 16, kTop + kHigh + 27, escaped(chart.across_unit));
  if (!chart.band.empty()) {
    text += "<polygon fill=\"#9a9a9a\" fill-opacity=\"0.45\" points=\"";
    for (const Dot& dot : chart.band) text += fmt::format("{:.1f},{:.1f} ", x(dot.x), y(dot.y + dot.half));
    for (auto dot = chart.band.rbegin(); dot != chart.band.rend(); ++dot)
      text += fmt::format("{:.1f},{:.1f} ", x(dot->x), y(dot->y - dot->half));
    text += "\"/>\n";
  }
  for (const Curve& curve : chart.curves) {
    if (curve.is_line) {
      text += fmt::format("<polyline fill=\"none\" stroke-width=\"2\" stroke=\"{}\" points=\"",
                          curve.mark->colour);
      for (const Dot& dot : curve.dots) text += fmt::format("{:.1f},{:.1f} ", x(dot.x), y(dot.y));
      text += "\"/>\n";
      continue;
    }
    text += fmt::format("<g fill=\"{0}\" stroke=\"none\" font-size=\"15\" text-anchor=\"middle\">",
                        curve.mark->colour);
    for (const Dot& dot : curve.dots) {
      if (dot.half > 0.0) {
        text += fmt::format(
            "<line x1=\"{0:.1f}\" x2=\"{0:.1f}\" y1=\"{1:.1f}\" y2=\"{2:.1f}\" stroke=\"{3}\" "
            "stroke-width=\"2\"/>",
            x(dot.x), y(dot.y - dot.half), y(dot.y + dot.half), curve.mark->colour);
      }
      text += fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\">{}</text>", x(dot.x), y(dot.y) + 4.5,
                          curve.mark->sign);
    }
    text += "</g>\n";
  }
  for (std::size_t index = 0; index < marks.size(); ++index) {
    const std::size_t row = index / 2;
    text += fmt::format("<text x=\"{}\" y=\"{}\" fill=\"{}\">{} {}</text>\n",
                        kLeft + (index % 2 == 0 ? 0.0 : 310.0),
                        kTop + kHigh + 62.0 + 30.0 * static_cast<double>(row), marks[index]->colour,
                        marks[index]->sign, marks[index]->name);
  }
  return fmt::format("<figure>\n{}</svg>\n<figcaption>{}</figcaption>\n</figure>\n", text,
                     escaped(chart.title));
}

class Shown {
 public:
  explicit Shown(UnitSystem system) : system_(system) {}
  [[nodiscard]] double pressure(double pressure_Pa) const { return bar(pressure_Pa).value; }
  [[nodiscard]] std::string pressureUnit() const {
    const std::string text = session::unitText(bar(0.0).ucum);
    return text.substr(text.find_first_not_of(' '));
  }
  [[nodiscard]] std::vector<Dot> dots(const std::vector<session::PressurePoint>& points) const {
    std::vector<Dot> all;
    for (const session::PressurePoint& point : points)
      all.push_back({point.boom_angle_rad / kDegree, pressure(point.pressure_Pa)});
    return all;
  }

 private:
  [[nodiscard]] Amount bar(double pressure_Pa) const {
    return inSystem({pressure_Pa / 1e5, "bar", 3}, system_);
  }
  UnitSystem system_;
};

std::pair<double, double> windowOf(const Calibration& calibration) {
  return {calibration.window_low_rad / kDegree, calibration.window_high_rad / kDegree};
}

/// How far the stated angle of each pose is from the sensor's line there.
std::string poseChart(const calibration::Job& job, const Calibration& calibration) {
  static constexpr Mark kPose{"pose, with ± 2 u of its angle", "o", "#0b5394"};
  Curve poses{.mark = &kPose, .dots = {}};
  for (const calibration::PoseReading& pose : job.poses) {
    if (!pose.boom_angle) continue;
    const double by_line_rad = calibration.boom_line.angle(pose.boom_sensor);
    const double u_rad = pose.boom_angle_u ? pose.boom_angle_u->inRadians() : 0.0;
    poses.dots.push_back({by_line_rad / kDegree, (pose.boom_angle->inRadians() - by_line_rad) / kDegree,
                          2.0 * u_rad / kDegree});
  }
  if (poses.dots.empty()) return "";
  std::vector<Dot> zero;
  const auto [first, last] = std::ranges::minmax(poses.dots, {}, &Dot::x);
  for (const double at : {first.x, last.x}) zero.push_back({at, 0.0});
  return svgOf({.title = "Stated angle of a pose less the angle by the sensor's line, over the boom angle",
                .across_unit = "°",
                .up_unit = "°",
                .curves = {{.mark = &kLineMark, .dots = zero, .is_line = true}, poses}});
}

std::string tareChart(const Calibration& calibration, const session::LiftCurves& curves, const Shown& shown) {
  if (curves.tare.empty()) return "";
  Chart chart{.title = pressureTitle(calibration) +
                       ". Grey field: the weigh window. Grey band: the tare with its 95 % uncertainty.",
              .across_unit = "°",
              .up_unit = shown.pressureUnit(),
              .curves = {},
              .shaded = windowOf(calibration)};
  // What lies outside of the taught angles is the start's bounce and the slow-down at the end.
  const double low_deg = curves.tare.front().boom_angle_rad / kDegree;
  const double high_deg = curves.tare.back().boom_angle_rad / kDegree;
  for (const session::EmptyPass& pass : curves.passes) {
    Curve curve{.mark = &markOf(LiftKind::Empty, pass.pace, pass.lowering),
                .dots = shown.dots(pass.readings)};
    std::erase_if(curve.dots, [&](const Dot& dot) { return dot.x < low_deg || dot.x > high_deg; });
    chart.curves.push_back(std::move(curve));
  }
  chart.curves.push_back({.mark = &kTareMark, .dots = shown.dots(curves.tare), .is_line = true});
  for (std::size_t index = 0; index < curves.tare.size(); ++index) {
    const double low = shown.pressure(curves.tare_low[index].pressure_Pa);
    const double high = shown.pressure(curves.tare_high[index].pressure_Pa);
    chart.band.push_back(
        {curves.tare[index].boom_angle_rad / kDegree, (low + high) / 2.0, (high - low) / 2.0});
  }
  return svgOf(chart);
}

std::string residualChart(const Calibration& calibration, const session::LiftCurves& curves,
                          const Shown& shown) {
  if (curves.residuals.empty()) return "";
  Chart chart{.title =
                  "What the fitted model leaves of each pass within the weigh window, as head pressure over "
                  "the boom angle",
              .across_unit = "°",
              .up_unit = shown.pressureUnit(),
              .curves = {}};
  const auto [low, high] = windowOf(calibration);
  chart.curves.push_back({.mark = &kLineMark, .dots = {{low, 0.0}, {high, 0.0}}, .is_line = true});
  for (const session::PassResiduals& pass : curves.residuals)
    chart.curves.push_back(
        {.mark = &markOf(pass.kind, pass.pace, pass.lowering), .dots = shown.dots(pass.points)});
  return svgOf(chart);
}

std::string budgetOf(const WeighedLift& lift, UnitSystem system) {
  const calibration::Weighing& weighing = lift.weighing;
  const int decimals = decimalsOf(weighing.expanded_uncertainty_kg);
  std::string text =
      fmt::format("<h3>{}: {} ± {} (95.45 %, k = {:.2f})</h3>\n", escaped(lift.log),
                  shown(weighing.mass_kg, "kg", decimals, system),
                  shown(weighing.expanded_uncertainty_kg, "kg", decimals, system), weighing.coverage_factor);
  Table table = {{"from", "standard uncertainty", "share of the variance"}};
  const std::vector<double> shares = varianceShares(weighing.budget);
  for (std::size_t index = 0; index < shares.size(); ++index) {
    const statistics::Contribution& line = weighing.budget[index];
    table.push_back({words({line.name, {}}, system),
                     shown(line.standard_uncertainty, "kg", decimalsOf(line.standard_uncertainty), system),
                     fmt::format("{:.0f} %", 100.0 * shares[index])});
  }
  text += htmlTable(table, true);
  for (const Message& warning : weighing.warnings) text += "<p>" + escaped(words(warning, system)) + "</p>\n";
  return text;
}

}  // namespace

std::vector<WeighedLift> weighedLifts(const calibration::Job& job, const Calibration& calibration) {
  std::vector<WeighedLift> weighed;
  for (const bool empty : {false, true}) {
    if (!weighed.empty()) break;
    for (const calibration::Lift& lift : job.lifts) {
      if ((lift.kind == LiftKind::Empty) != empty) continue;
      if (Expected<calibration::Weighing> weighing = calibration::weigh(calibration, lift.readings))
        weighed.push_back({lift.name, *std::move(weighing)});
    }
  }
  return weighed;
}

std::string calibrationHtml(const calibration::Job& job, const Calibration& calibration,
                            const session::LiftCurves& curves, const std::vector<WeighedLift>& weighed,
                            UnitSystem system) {
  const Shown shown(system);
  std::string text = fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
      "content=\"width=device-width, initial-scale=1\">\n<title>Calibration of {0}</title>\n"
      "<style>{1}</style>\n</head>\n<body>\n<h1>Calibration of {0}</h1>\n",
      escaped(calibration.unit_id), kStyle);
  text += htmlTable(summaryTable(calibration, system), false);
  text +=
      "<p>A calibration is not proof: weigh known masses with it. Nothing here makes the scale legal for "
      "trade; "
      "that needs the authority in charge.</p>\n";
  text += htmlList("Look at", calibration.warnings, system);
  text += "<h2>Poses</h2>\n" + htmlTable(poseTable(job, &calibration.boom_line), true) +
          poseChart(job, calibration);
  text += "<h2>Passes</h2>\n" + htmlTable(passTable(calibration, system), true) +
          residualChart(calibration, curves, shown);
  text += "<h2>Empty passes</h2>\n" + tareChart(calibration, curves, shown);
  if (!calibration.mass_checks.empty()) {
    text += "<h2>Known masses</h2>\n<p>Beside what was predicted before they were told.</p>\n" +
            htmlTable(massTable(calibration, system), true);
  }
  if (!weighed.empty()) {
    text +=
        "<h2>What the doubt of a mass is made of</h2>\n<p>The job's own lifts, as this calibration weighs "
        "them.</p>\n";
    for (const WeighedLift& lift : weighed) text += budgetOf(lift, system);
  }
  text += htmlList("Taken where the job was silent", calibration.taken, system);
  return text + "</body>\n</html>\n";
}

}  // namespace hingepin::cli
