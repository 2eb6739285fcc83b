// SPDX-License-Identifier: Apache-2.0
#include "engine/formats/calibration_json.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <string_view>
#include <utility>

#include "engine/base/strict_json.h"
#include "engine/base/text.h"
#include "engine/linkage/linkage.h"

namespace hingepin::formats {
namespace {

using calibration::Calibration;
using Json = nlohmann::ordered_json;

constexpr std::string_view kFormat = "hingepin-calibration/1";

template <class Enum, std::size_t N>
struct Names {
  std::array<std::pair<std::string_view, Enum>, N> pairs;
};
constexpr Names<calibration::SensorUnit, 3> kSensorUnitNames{{{{"V", calibration::SensorUnit::Volt},
                                                               {"1", calibration::SensorUnit::Count},
                                                               {"rad", calibration::SensorUnit::Radian}}}};
constexpr Names<calibration::LiftKind, 3> kLiftKindNames{{{{"empty", calibration::LiftKind::Empty},
                                                           {"test-mass", calibration::LiftKind::TestMass},
                                                           {"load", calibration::LiftKind::Load}}}};
constexpr Names<calibration::Direction, 2> kDirectionNames{
    {{{"up", calibration::Direction::Up}, {"down", calibration::Direction::Down}}}};
constexpr auto& namesOf(calibration::SensorUnit) { return kSensorUnitNames; }
constexpr auto& namesOf(calibration::LiftKind) { return kLiftKindNames; }
constexpr auto& namesOf(calibration::Direction) { return kDirectionNames; }

// One description of each struct serves the writer and the reader: `archive(key, field)` for every field.

template <class Archive>
void describe(Archive& archive, linkage::Pin& pin) {
  archive("along_m", pin.along);
  archive("across_m", pin.across);
}

template <class Archive>
void describe(Archive& archive, linkage::ZBarGeometry& geometry) {
  archive("boom_length_m", geometry.boom_length);
  archive("boom_pivot_height_m", geometry.boom_pivot_height);
  archive("lift_frame_pin", geometry.lift_frame_pin);
  archive("lift_boom_pin", geometry.lift_boom_pin);
  archive("tilt_frame_pin", geometry.tilt_frame_pin);
  archive("bellcrank_pivot", geometry.bellcrank_pivot);
  archive("bellcrank_tilt_arm_m", geometry.bellcrank_tilt_arm);
  archive("bellcrank_link_arm_m", geometry.bellcrank_link_arm);
  archive("bellcrank_angle_rad", geometry.bellcrank_angle);
  archive("link_length_m", geometry.link_length);
  archive("bucket_pin_distance_m", geometry.bucket_pin_distance);
  archive("bucket_pin_angle_rad", geometry.bucket_pin_angle);
  archive("tilt_cylinder_retracted_m", geometry.tilt_cylinder_retracted);
  archive("tilt_cylinder_extended_m", geometry.tilt_cylinder_extended);
}

template <class Archive>
void describe(Archive& archive, calibration::SensorLine& line) {
  archive("reading_at", line.reading_at);
  archive("angle_rad", line.angle_rad);
  archive("slope_rad_per_unit", line.slope_rad_per_unit);
  archive("angle_u_rad", line.angle_u_rad);
  archive("slope_u_rad_per_unit", line.slope_u_rad_per_unit);
  archive("chi_squared", line.chi_squared);
  archive("degrees_of_freedom", line.degrees_of_freedom);
}

template <class Archive>
void describe(Archive& archive, calibration::BucketSensor& sensor) {
  archive("bellcrank_line", sensor.bellcrank_line);
  archive("racked_boom_angle_rad", sensor.racked_boom_angle_rad);
  archive("racked_reading", sensor.racked_reading);
  archive("dumped_less_racked", sensor.dumped_less_racked);
}

template <class Archive>
void describe(Archive& archive, calibration::PressureSensor& sensor) {
  archive("range_Pa", sensor.range);
  archive("span_u", sensor.span_u);
  archive("linearity_u", sensor.linearity_u);
}

template <class Archive>
void describe(Archive& archive, statistics::SplineBasis& basis) {
  archive("low_rad", basis.low);
  archive("high_rad", basis.high);
  archive("intervals", basis.intervals);
}

template <class Archive>
void describe(Archive& archive, calibration::State& state) {
  archive("mean", state.mean);
  archive("factor", state.factor);
  archive("sources", state.sources);
}

template <class Archive>
void describe(Archive& archive, calibration::MassCheck& check) {
  archive("name", check.name);
  archive("reference_kg", check.reference_kg);
  archive("predicted_kg", check.predicted_kg);
  archive("difference_u_kg", check.difference_u_kg);
}

template <class Archive>
void describe(Archive& archive, calibration::PassSummary& pass) {
  archive("name", pass.name);
  archive("kind", pass.kind);
  archive("direction", pass.direction);
  archive("typed_points", pass.typed_points);
  archive("low_rad", pass.low_rad);
  archive("high_rad", pass.high_rad);
  archive("mean_speed_rad_per_s", pass.mean_speed_rad_per_s);
  archive("oil_temperature_K", pass.oil_temperature_K);
  archive("rows", pass.rows);
  archive("effective_rows", pass.effective_rows);
  archive("residual_Pa", pass.residual_Pa);
  archive("rows_left_out", pass.rows_left_out);
}

template <class Archive>
void describe(Archive& archive, Amount& amount) {
  archive("value", amount.value);
  archive("unit", amount.ucum);
  archive("decimals", amount.decimals);
}

template <class Archive>
void describe(Archive& archive, Calibration& calibration) {
  archive("unit_id", calibration.unit_id);
  archive("attachment_id", calibration.attachment_id);
  archive("rated_payload_kg", calibration.rated_payload_kg);
  archive("cylinder_count", calibration.cylinder_count);
  archive("head_area_m2", calibration.head_area_m2);
  archive("rod_area_m2", calibration.rod_area_m2);
  archive("uses_rod_pressure", calibration.uses_rod_pressure);
  archive("uses_pitch", calibration.uses_pitch);
  archive("boom_sensor_unit", calibration.boom_sensor_unit);
  archive("bucket_sensor_unit", calibration.bucket_sensor_unit);
  archive("boom_line", calibration.boom_line);
  archive("bucket_sensor", calibration.bucket_sensor);
  archive("window_low_rad", calibration.window_low_rad);
  archive("window_high_rad", calibration.window_high_rad);
  archive("gravity_m_per_s2", calibration.gravity_m_per_s2);
  archive("linkage", calibration.linkage);
  archive("payload_center", calibration.payload_center);
  archive("attachment_mass_kg", calibration.attachment_mass_kg);
  archive("pressure_sensor", calibration.pressure_sensor);
  archive("oil_grade", calibration.oil_grade);
  archive("boom_length_m", calibration.boom_length_m);
  archive("tare_basis", calibration.tare_basis);
  archive("log_span", calibration.log_span);
  archive("log_pace", calibration.log_pace);
  archive("lowering_taught", calibration.lowering_taught);
  archive("speed_taught", calibration.speed_taught);
  archive("slow_speed_rad_per_s", calibration.slow_speed_rad_per_s);
  archive("fast_speed_rad_per_s", calibration.fast_speed_rad_per_s);
  archive("taught_temperature_K", calibration.taught_temperature_K);
  archive("lowest_temperature_K", calibration.lowest_temperature_K);
  archive("highest_temperature_K", calibration.highest_temperature_K);
  archive("reference_pose_kg_per_deg", calibration.reference_pose_kg_per_deg);
  archive("state", calibration.state);
  archive("mass_checks", calibration.mass_checks);
  archive("passes", calibration.passes);
  archive("taken", calibration.taken);
  archive("warnings", calibration.warnings);
}

class Writer {
 public:
  template <class T>
  void operator()(const char* key, T& field) {
    if (std::optional<Json> value = write(field)) object_[key] = std::move(*value);
  }
  [[nodiscard]] Json take() { return std::move(object_); }

 private:
  template <class T>
  static std::optional<Json> write(T& field) {
    if constexpr (requires { Json(field); } && !std::is_enum_v<T> && !std::is_class_v<T>) {
      return Json(field);
    } else {
      Writer inner;
      describe(inner, field);
      return inner.take();
    }
  }
  static std::optional<Json> write(std::string& text) { return Json(text); }
  template <Dimension D>
  static std::optional<Json> write(Quantity<D>& quantity) {
    return Json(quantity.inSi());
  }
  template <class Enum>
    requires std::is_enum_v<Enum>
  static std::optional<Json> write(Enum& value) {
    for (const auto& [name, candidate] : namesOf(value).pairs)
      if (candidate == value) return Json(name);
    return std::nullopt;
  }
  template <class T>
  static std::optional<Json> write(std::optional<T>& field) {
    return field ? write(*field) : std::nullopt;
  }
  template <class T>
  static std::optional<Json> write(std::vector<T>& list) {
    Json array = Json::array();
    for (T& item : list) array.push_back(*write(item));
    return array;
  }
  static std::optional<Json> write(Eigen::VectorXd& vector) {
    Json array = Json::array();
    for (const double value : vector) array.push_back(value);
    return array;
  }
  static std::optional<Json> write(Eigen::MatrixXd& matrix) {
    Json rows = Json::array();
    for (Eigen::Index i = 0; i < matrix.rows(); ++i) {
      Eigen::VectorXd row = matrix.row(i);
      rows.push_back(*write(row));
    }
    return rows;
  }
  static std::optional<Json> write(Message& message) {
    Json object = {{"code", message.code}};
    Json values = Json::object();
    for (auto& [name, value] : message.values)
      values[name] = std::visit([](auto& held) { return *write(held); }, value);
    object["values"] = std::move(values);
    return object;
  }

  Json object_ = Json::object();
};

/// Reads the fields of one object; the first error stays.
class Reader {
 public:
  explicit Reader(JsonNode node) : node_(std::move(node)) {
    if (node_.value().kind != JsonKind::Object) error_ = node_.expectObject({}).error();
  }

  template <class T>
  void operator()(const char* key, T& field) {
    seen_.emplace_back(key);
    if (error_) return;
    if constexpr (requires { field.has_value(); }) {
      const std::optional<JsonNode> node = node_.find(key);
      if (node) keep(read(*node, field.emplace()));
    } else {
      Expected<JsonNode> node = node_.at(key);
      if (!node)
        error_ = node.error();
      else
        keep(read(*node, field));
    }
  }

  /// The first error, or that of a key which no field has taken.
  [[nodiscard]] Expected<void> finish() const {
    if (error_) return std::unexpected(*error_);
    for (const std::string& key : node_.value().keys) {
      if (std::ranges::find(seen_, key) != seen_.end()) continue;
      std::string known;
      for (const std::string& name : seen_) known += (known.empty() ? "" : ", ") + name;
      return node_.find(key)->error("json-unknown-key", {{"key", key}, {"known", known}});
    }
    return {};
  }

 private:
  void keep(Expected<void> result) {
    if (!result) error_ = result.error();
  }
  template <class T>
  static Expected<void> read(const JsonNode& node, T& field) {
    Reader inner(node);
    describe(inner, field);
    return inner.finish();
  }
  template <class T, class V>
  static Expected<void> store(Expected<V> value, T& field) {
    if (!value) return std::unexpected(value.error());
    field = static_cast<T>(*value);
    return {};
  }
  static Expected<void> read(const JsonNode& node, double& field) {
    // No quantity of a loader in SI comes near it, and products of such numbers stay finite.
    constexpr double kMostNumber = 1e15;
    const Expected<double> value = node.number();
    if (value && std::abs(*value) > kMostNumber) return node.error("calibration-inconsistent");
    return store(value, field);
  }
  static Expected<void> read(const JsonNode& node, std::string& field) { return store(node.string(), field); }
  static Expected<void> read(const JsonNode& node, int& field) {
    const Expected<double> value = node.number();
    if (!value) return std::unexpected(value.error());
    if (*value != std::floor(*value) || std::abs(*value) > 1e9) return node.error("calibration-inconsistent");
    field = static_cast<int>(*value);
    return {};
  }
  static Expected<void> read(const JsonNode& node, bool& field) {
    if (node.value().kind != JsonKind::Boolean) return node.error("calibration-inconsistent");
    field = node.value().boolean;
    return {};
  }
  template <Dimension D>
  static Expected<void> read(const JsonNode& node, Quantity<D>& field) {
    const Expected<double> value = node.number();
    if (!value) return std::unexpected(value.error());
    field = Quantity<D>::fromSi(*value);
    return {};
  }
  template <class Enum>
    requires std::is_enum_v<Enum>
  static Expected<void> read(const JsonNode& node, Enum& field) {
    const Expected<std::string> text = node.string();
    if (!text) return std::unexpected(text.error());
    for (const auto& [name, candidate] : namesOf(field).pairs)
      if (name == *text) {
        field = candidate;
        return {};
      }
    return node.error("calibration-inconsistent");
  }
  template <class T>
  static Expected<void> read(const JsonNode& node, std::vector<T>& list) {
    Expected<std::vector<JsonNode>> elements = node.elements();
    if (!elements) return std::unexpected(elements.error());
    for (const JsonNode& element : *elements)
      if (Expected<void> result = read(element, list.emplace_back()); !result) return result;
    return {};
  }
  static Expected<void> read(const JsonNode& node, Eigen::VectorXd& vector) {
    std::vector<double> values;
    if (Expected<void> result = read(node, values); !result) return result;
    vector = Eigen::Map<const Eigen::VectorXd>(values.data(), std::ssize(values));
    return {};
  }
  static Expected<void> read(const JsonNode& node, Eigen::MatrixXd& matrix) {
    std::vector<std::vector<double>> rows;
    if (Expected<void> result = read(node, rows); !result) return result;
    const std::size_t columns = rows.empty() ? 0 : rows.front().size();
    matrix.resize(std::ssize(rows), static_cast<Eigen::Index>(columns));
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (rows[i].size() != columns) return node.error("calibration-inconsistent");
      for (std::size_t k = 0; k < columns; ++k) matrix(i, k) = rows[i][k];
    }
    return {};
  }
  static Expected<void> read(const JsonNode& node, Message& message) {
    if (Expected<void> shape = node.expectObject({"code", "values"}); !shape) return shape;
    const Expected<JsonNode> code = node.at("code");
    if (!code) return std::unexpected(code.error());
    if (Expected<void> result = read(*code, message.code); !result) return result;
    const Expected<JsonNode> values = node.at("values");
    if (!values) return std::unexpected(values.error());
    if (values->value().kind != JsonKind::Object) return values->expectObject({});
    for (const std::string& name : values->value().keys) {
      const JsonNode value = *values->find(name);
      if (value.value().kind == JsonKind::Object) {
        Amount amount{};
        if (Expected<void> result = read(value, amount); !result) return result;
        message.values.emplace_back(name, amount);
      } else {
        std::string text;
        if (Expected<void> result = read(value, text); !result) return result;
        message.values.emplace_back(name, text);
      }
    }
    return {};
  }

  JsonNode node_;
  std::vector<std::string> seen_;
  std::optional<Error> error_;
};

/// What no single field can tell: sizes that belong together, values that would make nonsense of a weighing.
bool isConsistent(const Calibration& calibration) {
  const auto& basis = calibration.tare_basis;
  const auto& state = calibration.state;
  return basis.intervals >= 1 && basis.intervals <= 1000 && basis.low < basis.high &&
         state.mean.size() == calibration::kUnknowns + basis.size() &&
         state.factor.rows() == state.mean.size() && state.factor.cols() == std::ssize(state.sources) &&
         calibration.cylinder_count >= 1 && calibration.head_area_m2 > 0.0 &&
         calibration.rod_area_m2 >= 0.0 && calibration.rated_payload_kg > 0.0 &&
         calibration.gravity_m_per_s2 > 0.0 && calibration.boom_length_m > 0.0 &&
         calibration.boom_line.slope_rad_per_unit != 0.0 &&
         calibration.window_low_rad < calibration.window_high_rad &&
         basis.low <= calibration.window_low_rad && basis.high >= calibration.window_high_rad &&
         calibration.pressure_sensor.range > Pressure() &&
         (calibration.linkage || !calibration.log_span.empty()) &&
         (!calibration.bucket_sensor || (!calibration.bucket_sensor->racked_reading.empty() &&
                                         calibration.bucket_sensor->racked_reading.size() ==
                                             calibration.bucket_sensor->racked_boom_angle_rad.size()));
}

}  // namespace

std::string writeCalibration(const Calibration& calibration) {
  Calibration copy = calibration;  // describe() serves the reader too, so it takes fields it could change
  Writer writer;
  std::string format(kFormat);
  writer("format", format);
  describe(writer, copy);
  return writer.take().dump(1) + "\n";
}

Expected<Calibration> readCalibration(std::string text, const std::string& file) {
  Expected<JsonDocument> document = readJson(std::move(text), file);
  if (!document) return std::unexpected(document.error());
  const JsonNode root(*document);
  if (root.value().kind != JsonKind::Object) return std::unexpected(root.expectObject({}).error());
  Calibration calibration;
  std::string format;
  Reader reader(root);
  reader("format", format);
  if (!format.empty() && format != kFormat)
    return root.find("format")->error("format-unsupported",
                                      {{"text", excerpt(format)}, {"expected", std::string(kFormat)}});
  describe(reader, calibration);
  if (Expected<void> done = reader.finish(); !done) return std::unexpected(done.error());
  if (!isConsistent(calibration)) return root.error("calibration-inconsistent");
  if (calibration.linkage && !linkage::Linkage::make(*calibration.linkage)) {
    return root.find("linkage")->error("calibration-inconsistent");
  }
  return calibration;
}

}  // namespace hingepin::formats
