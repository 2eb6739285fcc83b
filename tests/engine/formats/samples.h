// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <gtest/gtest.h>
#include <map>

#include <string>

#include "engine/formats/byte_source.h"

namespace hingepin::formats {

/// A well-formed job that uses every key; its logs are in `kSampleLogs`. All invented.
inline const std::string kSampleJob = R"json({
  "format": "hingepin-job/1",
  "unit": {
    "id": "L-27",
    "lift_cylinders": { "count": 2, "bore": "130 mm", "rod": "75 mm" },
    "rated_payload": "4500 kg",
    "weigh_window": ["-8 deg", "18 deg"],
    "pressure_sensor": { "range": "350 bar", "span_u": "0.5 %", "linearity_u": "0.1 %" },
    "load_friction": { "mean": "1.5 %", "u": "0.6 %" },
    "oil": { "grade": "ISO VG 32" },
    "linkage": {
      "kind": "z-bar",
      "boom_length": "2.55 m",
      "boom_pivot_height": "1.95 m",
      "lift_frame_pin": ["0.08 m", "-0.53 m"],
      "lift_boom_pin": ["1.50 m", "-0.24 m"],
      "tilt_frame_pin": ["0.164 m", "-0.158 m"],
      "bellcrank_pivot": ["1.543 m", "0.487 m"],
      "bellcrank_tilt_arm": "0.71 m",
      "bellcrank_link_arm": "0.792 m",
      "bellcrank_angle": "184 deg",
      "link_length": "0.609 m",
      "bucket_pin_distance": "0.307 m",
      "bucket_pin_angle": "94 deg",
      "tilt_cylinder_retracted": "1.364 m",
      "tilt_cylinder_extended": "1.709 m"
    }
  },
  "attachment": { "id": "GP-2.7", "coupler": "320 kg", "bucket": "1250 kg",
                  "payload_center": ["0.60 m", "0.45 m"], "payload_center_u": ["0.08 m", "0.08 m"],
                  "heel": ["-0.10 m", "-0.22 m"], "cutting_edge": ["1.22 m", "-0.22 m"] },
  "gravity": "9.80665 m/s2",
  "site": { "latitude": "44.5 deg", "height": "310 m" },
  "poses": [
    { "pose": "boom-lowest",    "boom_angle": "-40 deg", "boom_angle_u": "0.3 deg", "boom_sensor": "0.71 V", "bucket_sensor": "3.21 V" },
    { "pose": "boom-highest",   "boom_angle": "48 deg",  "boom_sensor": "4.22 V", "bucket_sensor": "2280 mV" },
    { "pose": "boom-reference", "boom_angle": "3 deg",   "boom_angle_u": "0.6 deg", "boom_sensor": "2.43 V", "bucket_sensor": "2.71 V" },
    { "pose": "bucket-dumped",  "boom_sensor": "2.43 V", "bucket_sensor": "1.76 V" },
    { "pose": "bucket-racked",  "boom_sensor": "2.43 V" }
  ],
  "lifts": [
    { "kind": "empty", "pace": "slow", "log": "empty-slow.csv", "direction": "up" },
    { "kind": "test-mass", "pace": "fast", "mass": "2000 kg", "mass_u": "2 kg", "log": "mass.csv" },
    { "kind": "empty", "points": [
      { "boom_sensor": "2.11 V", "head_pressure": "88 bar", "rod_pressure": "4 bar", "bucket_sensor": "2.81 V",
        "boom_speed": "8 deg/s", "oil_temperature": "52 Cel" },
      { "boom_sensor": "2.31 V", "head_pressure": "1290 [psi]" } ] }
  ],
  "loads": [ { "net": "21840 kg", "net_u": "15 kg", "lifts": [ { "pace": "fast", "log": "load-1.csv" } ] } ]
})json";

inline const std::string kSampleLog =
    "time [s],boom_sensor [V],bucket_sensor [V],head_pressure [bar],rod_pressure [bar],engine_speed [/min],"
    "oil_temperature [Cel]\n"
    "0,1.10,2.7,85.5,4.1,900,52\n"
    "0.02,1.12,2.7,85.9,4.1,901,52\n"
    "0.04,1.14,2.7,,4.2,902,52\n"
    "0.06,1.16,2.7,86.4,,,52.5\n";

inline const std::string kSampleSurvey = R"({
  "format": "hingepin-survey/1",
  "unit": { "id": "L-27", "lift_cylinders": { "count": 2, "bore": "130 mm", "rod": "75 mm" }, "rated_payload": "4500 kg" },
  "tape_u": "4 mm", "inclinometer_u": "0.25 deg", "ground_u": "0.5 deg",
  "poses": [{ "pose": "low", "tilt_cylinder": "extended" }, { "pose": "free" }],
  "measurements": [
    { "kind": "distance", "from": "boom-pivot", "to": "hinge-pin", "value": "2550 mm" },
    { "kind": "distance", "from": "lift-frame-pin", "to": "lift-boom-pin", "pose": "low", "value": "54.5 [in_i]", "u": "3 mm" },
    { "kind": "height", "pin": "boom-pivot", "value": "1.95 m" },
    { "kind": "inclination", "from": "boom-pivot", "to": "hinge-pin", "pose": "free", "value": "-3 deg", "u": "0.2 deg" },
    { "kind": "boom-plate-angle", "pose": "low", "value": "-38 deg" },
    { "kind": "boom-plate-offset", "pin": "hinge-pin", "value": "210 mm" },
    { "kind": "bucket-floor-angle", "pose": "low", "value": "44 deg" },
    { "kind": "ground-angle", "value": "0.4 deg" },
    { "kind": "horizontal", "from": "boom-pivot", "to": "tilt-frame-pin", "value": "164 mm" },
    { "kind": "vertical", "from": "boom-pivot", "to": "lift-frame-pin", "value": "-530 mm" },
    { "kind": "data-sheet", "number": "lift_frame_pin/1", "value": "-0.53 m", "u": "10 mm" },
    { "kind": "data-sheet", "number": "bellcrank_angle", "value": "184 deg" },
    { "kind": "distance", "from": "hinge-pin", "to": "bucket-link-pin", "edges": "outer", "pin_diameters": ["90 mm", "80 mm"],
      "value": "480 mm" }
  ]
})";

inline const std::string kSampleProof = R"({
  "format": "hingepin-proof/1",
  "unit": "L-27",
  "when": "as-left",
  "rated_payload": "4500 kg",
  "tolerance": { "scheme": "percent", "limit": "1 %", "of": "rated" },
  "decision": { "rule": "guarded", "confidence": 0.9, "prior_mean": "2 kg", "prior_u": "15 kg" },
  "display_step": "5 kg",
  "zero_indications": ["5 kg", "-5 kg"],
  "masses": [
    { "reference": "2000 kg", "reference_u": "1 kg", "pace": "fast", "approach": "down",
      "indications": ["1985 kg", "1990 kg", "1995 kg"] }
  ],
  "trucks": [
    { "gross": "36120 kg", "tare": "13460 kg", "scale_interval": "20 kg", "scale_u": "6 kg",
      "certificate": "invented-17", "certificate_expires": "2027-01-31", "gross_ticket": "118", "tare_ticket": "117",
      "gross_time": "2026-05-04T10:15", "tare_time": "2026-05-04T09:40", "zeroed": true, "whole_on_deck": false,
      "same_driver_fuel": true, "legal_gross": "40 t",
      "indications": ["4480 kg", "4535 kg", "4490 kg", "4550 kg", "4520 kg"] }
  ],
  "loader_on_scale": [
    { "empty": "15240 kg", "scale_interval": "20 kg",
      "buckets": [ { "loaded": "19760 kg", "indication": "4490 kg" } ] }
  ],
  "costs": { "per_day": "1200 t", "price_per_tonne": 18.5, "currency": "EUR", "trucks_per_day": 50,
             "truck_target": "22500 kg", "truck_legal": "22660 kg", "buckets_per_truck": 5 },
  "plan": { "bucket": "4500 kg", "buckets_per_truck": 5, "repeatability": "30 kg", "scale_interval": "20 kg",
            "scale_u": "6 kg", "error": "20 kg", "rate": 0.8 }
})";

inline const std::map<std::string, std::string> kSampleLogs = {
    {"yard/empty-slow.csv", kSampleLog}, {"yard/mass.csv", kSampleLog}, {"yard/load-1.csv", kSampleLog}};

inline Opener openerOf(const std::map<std::string, std::string>& files) {
  return [&files](const std::string& path) -> Expected<ByteSource> {
    const auto file = files.find(path);
    if (file == files.end())
      return fail(ErrorKind::NotFound, "file-not-found", {{"path", path}}, {.file = path});
    return sourceOf(file->second);
  };
}

/// A sample with its first `from` replaced, which must be there.
inline std::string sampleWith(std::string sample, const std::string& from, const std::string& to) {
  const std::size_t at = sample.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return at == std::string::npos ? sample : sample.replace(at, from.size(), to);
}

}  // namespace hingepin::formats
