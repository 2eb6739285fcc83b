// SPDX-License-Identifier: Apache-2.0
#include "engine/cli/plot.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>

#include "engine/session/catalogue.h"
#include "engine/units/degree.h"

namespace hingepin::cli {
namespace {

using session::PressurePoint;

constexpr int kColumns = 84;
constexpr int kRows = 17;

struct Series {
  const Mark* mark;
  std::vector<PressurePoint> points;
};

struct View {
  std::vector<Series> series;  ///< the tare last, so that it is drawn over the readings
  double low_rad = 0.0;
  double high_rad = 0.0;
  double least_Pa = 0.0;
  double most_Pa = 0.0;

  [[nodiscard]] double across(double angle_rad) const { return (angle_rad - low_rad) / (high_rad - low_rad); }
  [[nodiscard]] double down(double pressure_Pa) const {
    return (most_Pa - pressure_Pa) / (most_Pa - least_Pa);
  }
};

double medianOf(std::vector<double>& values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::ranges::nth_element(values, middle);
  return *middle;
}

/// The readings of one pass, by the median of each of `cells` equal parts of the view: a wild reading does
/// not show.
std::vector<PressurePoint> thinned(const std::vector<PressurePoint>& readings, const View& view, int cells) {
  std::map<int, std::vector<double>> by_cell;
  for (const PressurePoint& reading : readings) {
    const double cell = std::floor(view.across(reading.boom_angle_rad) * cells);
    if (cell >= 0.0 && cell < cells) by_cell[static_cast<int>(cell)].push_back(reading.pressure_Pa);
  }
  std::vector<PressurePoint> points;
  for (auto& [cell, values] : by_cell) {
    points.push_back(
        {view.low_rad + (cell + 0.5) / cells * (view.high_rad - view.low_rad), medianOf(values)});
  }
  return points;
}

/// @return nothing to be seen where the view has no series.
View viewOf(const session::EmptyLift& empty, int cells) {
  View view;
  if (empty.tare.empty()) return view;
  // A little more than what was taught, to show where the passes were left out: the start's bounce, the
  // slow-down.
  const double taught_rad = empty.tare.back().boom_angle_rad - empty.tare.front().boom_angle_rad;
  view.low_rad = empty.tare.front().boom_angle_rad - 0.05 * taught_rad;
  view.high_rad = empty.tare.back().boom_angle_rad + 0.05 * taught_rad;
  for (const session::EmptyPass& pass : empty.passes)
    view.series.push_back({&markOf(calibration::LiftKind::Empty, pass.pace, pass.lowering),
                           thinned(pass.readings, view, cells)});
  view.series.push_back({&kTareMark, empty.tare});
  view.least_Pa = view.most_Pa = empty.tare.front().pressure_Pa;
  for (const Series& series : view.series) {
    for (const PressurePoint& point : series.points) {
      view.least_Pa = std::min(view.least_Pa, point.pressure_Pa);
      view.most_Pa = std::max(view.most_Pa, point.pressure_Pa);
    }
  }
  const double edge_Pa = std::max(0.02 * (view.most_Pa - view.least_Pa), 1.0);
  view.least_Pa -= edge_Pa;
  view.most_Pa += edge_Pa;
  return view;
}

std::string pressure(double pressure_Pa, UnitSystem system) {
  return session::show(Amount{pressure_Pa / 1e5, "bar", 1}, system);
}

/// The marks that the view has, each once.
std::vector<const Mark*> marksOf(const View& view) {
  std::vector<const Mark*> marks;
  for (const Series& series : view.series) {
    if (std::ranges::find(marks, series.mark) == marks.end()) marks.push_back(series.mark);
  }
  return marks;
}

int columnOf(const View& view, double angle_rad) {
  return std::clamp(static_cast<int>(view.across(angle_rad) * kColumns), 0, kColumns - 1);
}

}  // namespace

const Mark& markOf(calibration::LiftKind kind, calibration::Pace pace, bool lowering) {
  static constexpr Mark kSlow{"slow pass", "o", "#0b5394"};
  static constexpr Mark kFast{"fast pass", "x", "#b45f06"};
  static constexpr Mark kLowering{"lowering pass", "v", "#38761d"};
  static constexpr Mark kMass{"known mass", "+", "#741b47"};
  if (kind != calibration::LiftKind::Empty) return kMass;
  if (lowering) return kLowering;
  return pace == calibration::Pace::Slow ? kSlow : kFast;
}

std::string pressureTitle(const calibration::Calibration& calibration) {
  return calibration.uses_rod_pressure
             ? "Head pressure with the bucket empty, less the rod side's share, over the boom angle"
             : "Head pressure with the bucket empty, over the boom angle";
}

std::string plotOf(const session::EmptyLift& empty, const calibration::Calibration& calibration,
                   UnitSystem system) {
  const View view = viewOf(empty, kColumns);
  if (view.series.empty()) return "";
  std::vector<std::vector<std::string_view>> cells(kRows, std::vector<std::string_view>(kColumns, " "));
  for (const Series& series : view.series) {
    for (const PressurePoint& point : series.points) {
      const auto row = static_cast<std::size_t>(std::lround(view.down(point.pressure_Pa) * (kRows - 1)));
      cells[row][static_cast<std::size_t>(columnOf(view, point.boom_angle_rad))] = series.mark->sign;
    }
  }
  std::string text = "  " + pressureTitle(calibration) + "\n";
  for (int row = 0; row < kRows; ++row) {
    const double here_Pa = view.most_Pa + (view.least_Pa - view.most_Pa) * row / (kRows - 1);
    std::string line =
        fmt::format("  {:>9} {}", row % 4 == 0 ? pressure(here_Pa, system) : "", row % 4 == 0 ? "┤" : "│");
    for (const std::string_view cell : cells[static_cast<std::size_t>(row)]) line += cell;
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + "\n";
  }

  std::vector<std::string_view> axis(kColumns, "─");
  std::string below(kColumns + 4, ' ');
  const double step_rad = 5.0 * kDegree;
  int free_from = 0;
  for (double tick = std::ceil(view.low_rad / step_rad); tick * step_rad <= view.high_rad; ++tick) {
    const int column = columnOf(view, tick * step_rad);
    axis[static_cast<std::size_t>(column)] = "┬";
    const std::string label = fmt::format("{:.0f}", tick * step_rad / kDegree);
    if (column < free_from) continue;
    below.replace(static_cast<std::size_t>(column), label.size(), label);
    free_from = column + static_cast<int>(label.size()) + 1;
  }
  std::string window(kColumns, ' ');
  const int from = columnOf(view, calibration.window_low_rad);
  const int to = columnOf(view, calibration.window_high_rad);
  for (int column = from; column <= to; ++column) window[static_cast<std::size_t>(column)] = '=';
  const std::string_view name = " weigh window ";
  const int name_width = static_cast<int>(name.size());
  const int name_from = (from + to - name_width) / 2 + 1;
  if (to - from > name_width + 4) window.replace(static_cast<std::size_t>(name_from), name.size(), name);
  window.erase(window.find_last_not_of(' ') + 1);
  below.erase(below.find_last_not_of(' ') + 1);
  text += fmt::format("  {:>9} └", "");
  for (const std::string_view cell : axis) text += cell;
  text += fmt::format("\n  {:>9}  {}°\n  {:>9}  {}\n  {:>9}  ", "", below, "", window, "");
  for (const Mark* const mark : marksOf(view)) text += fmt::format("{} {}   ", mark->sign, mark->name);
  text.erase(text.find_last_not_of(' ') + 1);
  return text + "\n";
}

}  // namespace hingepin::cli
