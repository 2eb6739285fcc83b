// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <random>
#include <set>

#include "engine/linkage/linkage.h"
#include "tests/engine/linkage/machines.h"

namespace hingepin::linkage {
namespace {

using Edit = std::function<void(ZBarGeometry&)>;

const MessageValue& value(const Error& error, const std::string& name) {
  for (const auto& [key, found] : error.message.values)
    if (key == name) return found;
  throw std::out_of_range(error.message.code + " has no " + name);
}

/// The refusal of an edited machine; checks that it names a field, a value and a range that the value is
/// outside of.
Error refusal(const Machine& machine, const Edit& edit) {
  ZBarGeometry geometry = machine.geometry;
  edit(geometry);
  const auto linkage = Linkage::make(geometry);
  if (linkage) {
    ADD_FAILURE() << machine.name << ": taken as plausible";
    return {};
  }
  const Error& error = linkage.error();
  EXPECT_EQ(error.kind, ErrorKind::InvalidInput);
  EXPECT_EQ(error.place.pointer, "/" + std::get<std::string>(value(error, "field")));
  const double low = std::get<Amount>(value(error, "low")).value;
  const double high = std::get<Amount>(value(error, "high")).value;
  EXPECT_LE(low, high);
  const double given = std::get<Amount>(value(error, "value")).value;
  EXPECT_FALSE(given >= low && given <= high) << given << " in " << low << " to " << high;
  return error;
}

std::string field(const Error& error) { return std::get<std::string>(value(error, "field")); }

TEST(PlausibleLinkageTest, BothMachinesAndTheirLikesFrom2tTo60tAreTaken) {
  for (const Machine& machine : machines()) {
    for (const double scale : {0.58, 0.75, 1.0, 1.3, 1.7}) {
      ZBarGeometry g = machine.geometry;
      for (Length* length :
           {&g.boom_length, &g.boom_pivot_height, &g.bellcrank_tilt_arm, &g.bellcrank_link_arm,
            &g.link_length, &g.bucket_pin_distance, &g.tilt_cylinder_retracted, &g.tilt_cylinder_extended})
        *length = scale * *length;
      for (Pin* pin : {&g.lift_frame_pin, &g.lift_boom_pin, &g.tilt_frame_pin, &g.bellcrank_pivot})
        *pin = {scale * pin->along, scale * pin->across};
      EXPECT_TRUE(Linkage::make(g)) << machine.name << " times " << scale;
    }
  }
}

TEST(PlausibleLinkageTest, NeighboursOfAWorkingMachineAreTaken) {
  std::mt19937_64 random(7);
  const auto nudge = [&](Length& length) {
    length = length * (1.0 + 0.02 * (static_cast<double>(random() >> 11) * 0x1p-52 - 1.0));
  };
  for (const Machine& machine : machines()) {
    for (int i = 0; i < 500; ++i) {
      ZBarGeometry g = machine.geometry;
      for (Length* length : {&g.boom_length, &g.bellcrank_tilt_arm, &g.bellcrank_link_arm, &g.link_length,
                             &g.bucket_pin_distance, &g.tilt_cylinder_retracted, &g.tilt_cylinder_extended})
        nudge(*length);
      for (Pin* pin : {&g.lift_frame_pin, &g.lift_boom_pin, &g.tilt_frame_pin, &g.bellcrank_pivot}) {
        nudge(pin->along);
        nudge(pin->across);
      }
      EXPECT_TRUE(Linkage::make(g)) << machine.name << ", draw " << i;
    }
  }
}

TEST(PlausibleLinkageTest, AnAngleWrittenATurnAwayIsTheSameAngle) {
  Machine machine = demoMachine();
  machine.geometry.bellcrank_angle = Angle::fromDegrees(184 - 360);
  const auto linkage = Linkage::make(machine.geometry);
  ASSERT_TRUE(linkage);
  const auto same = Linkage::make(demoMachine().geometry);
  EXPECT_NEAR(linkage->tilt(0.0, 1.6)->bucket_by_boom.value, same->tilt(0.0, 1.6)->bucket_by_boom.value,
              1e-12);
}

TEST(PlausibleLinkageTest, ASignSwappedNamesThatCoordinate) {
  const auto flip = [](Length& length) { length = -length; };
  for (const Machine& machine : machines()) {
    SCOPED_TRACE(machine.name);
    EXPECT_EQ(field(refusal(machine, [&](auto& g) { flip(g.lift_frame_pin.across); })), "lift_frame_pin/1");
    EXPECT_EQ(field(refusal(machine, [&](auto& g) { flip(g.lift_boom_pin.along); })), "lift_boom_pin/0");
    EXPECT_EQ(field(refusal(machine, [&](auto& g) { flip(g.bellcrank_pivot.along); })), "bellcrank_pivot/0");
    EXPECT_EQ(field(refusal(machine, [&](auto& g) { flip(g.bellcrank_pivot.across); })), "bellcrank_pivot/1");
    // Both signs of the pin's other coordinate would mend it, so the pin is what can be named.
    EXPECT_TRUE(field(refusal(machine, [&](auto& g) {
                  flip(g.tilt_frame_pin.along);
                })).starts_with("tilt_frame_pin/"));
  }
  // On the thesis machine a tilt pin mirrored up still makes a working linkage, as does a lift pin mirrored
  // on either.
  EXPECT_EQ(field(refusal(demoMachine(), [&](auto& g) { flip(g.tilt_frame_pin.across); })),
            "tilt_frame_pin/1");
}

TEST(PlausibleLinkageTest, CoordinatesInTheWrongOrderNameThatPin) {
  const auto swap = [](Pin& pin) { std::swap(pin.along, pin.across); };
  for (const Machine& machine : machines()) {
    EXPECT_EQ(field(refusal(machine, [&](auto& g) { swap(g.lift_frame_pin); })), "lift_frame_pin/1");
    EXPECT_EQ(field(refusal(machine, [&](auto& g) { swap(g.lift_boom_pin); })), "lift_boom_pin/0");
    EXPECT_EQ(field(refusal(machine, [&](auto& g) { swap(g.bellcrank_pivot); })), "bellcrank_pivot/0");
  }
}

struct Number {
  const char* name;
  std::function<Length*(ZBarGeometry&)> find;
};

std::vector<Number> lengths() {
  return {{"boom_length", [](auto& g) { return &g.boom_length; }},
          {"boom_pivot_height", [](auto& g) { return &g.boom_pivot_height; }},
          {"lift_frame_pin/0", [](auto& g) { return &g.lift_frame_pin.along; }},
          {"lift_frame_pin/1", [](auto& g) { return &g.lift_frame_pin.across; }},
          {"lift_boom_pin/0", [](auto& g) { return &g.lift_boom_pin.along; }},
          {"lift_boom_pin/1", [](auto& g) { return &g.lift_boom_pin.across; }},
          {"tilt_frame_pin/0", [](auto& g) { return &g.tilt_frame_pin.along; }},
          {"tilt_frame_pin/1", [](auto& g) { return &g.tilt_frame_pin.across; }},
          {"bellcrank_pivot/0", [](auto& g) { return &g.bellcrank_pivot.along; }},
          {"bellcrank_pivot/1", [](auto& g) { return &g.bellcrank_pivot.across; }},
          {"bellcrank_tilt_arm", [](auto& g) { return &g.bellcrank_tilt_arm; }},
          {"bellcrank_link_arm", [](auto& g) { return &g.bellcrank_link_arm; }},
          {"link_length", [](auto& g) { return &g.link_length; }},
          {"bucket_pin_distance", [](auto& g) { return &g.bucket_pin_distance; }},
          {"tilt_cylinder_retracted", [](auto& g) { return &g.tilt_cylinder_retracted; }},
          {"tilt_cylinder_extended", [](auto& g) { return &g.tilt_cylinder_extended; }}};
}

TEST(PlausibleLinkageTest, MillimetresTakenForMetresNameThatNumber) {
  for (const Machine& machine : machines()) {
    for (const Number& number : lengths()) {
      SCOPED_TRACE(machine.name + " " + number.name);
      ZBarGeometry g = machine.geometry;
      if (number.find(g)->inMetres() == 0.0) continue;
      EXPECT_EQ(field(refusal(machine,
                              [&](auto& edited) { *number.find(edited) = 1000.0 * *number.find(edited); })),
                number.name);
    }
    // All of them at once.
    EXPECT_EQ(field(refusal(machine,
                            [&](auto& g) {
                              for (const Number& number : lengths())
                                *number.find(g) = 1000.0 * *number.find(g);
                            })),
              "boom_length");
  }
}

TEST(PlausibleLinkageTest, NumbersThatAreNoneNameThatNumber) {
  for (const double wrong :
       {std::nan(""), std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()}) {
    for (const Number& number : lengths())
      EXPECT_EQ(field(refusal(demoMachine(), [&](auto& g) { *number.find(g) = Length::fromMetres(wrong); })),
                number.name);
    EXPECT_EQ(field(refusal(demoMachine(), [&](auto& g) { g.bellcrank_angle = Angle::fromRadians(wrong); })),
              "bellcrank_angle");
  }
  for (const Number& number : lengths()) {
    if (std::string(number.name).find('/') != std::string::npos) continue;
    EXPECT_EQ(field(refusal(demoMachine(), [&](auto& g) { *number.find(g) = Length{}; })), number.name);
    EXPECT_EQ(field(refusal(demoMachine(), [&](auto& g) { *number.find(g) = -*number.find(g); })),
              number.name);
  }
}

TEST(PlausibleLinkageTest, DegreesAndRadiansMistakenNameThatAngle) {
  for (const Machine& machine : machines()) {
    EXPECT_EQ(
        field(refusal(
            machine, [](auto& g) { g.bellcrank_angle = Angle::fromRadians(g.bellcrank_angle.inDegrees()); })),
        "bellcrank_angle");
    EXPECT_EQ(
        field(refusal(
            machine, [](auto& g) { g.bellcrank_angle = Angle::fromDegrees(g.bellcrank_angle.inRadians()); })),
        "bellcrank_angle");
    EXPECT_EQ(field(refusal(
                  machine,
                  [](auto& g) { g.bucket_pin_angle = Angle::fromRadians(g.bucket_pin_angle.inDegrees()); })),
              "bucket_pin_angle");
    EXPECT_EQ(field(refusal(machine, [](auto& g) { g.bucket_pin_angle = -g.bucket_pin_angle; })),
              "bucket_pin_angle");
  }
}

TEST(PlausibleLinkageTest, ACylinderOfImpossibleStrokeIsRefused) {
  for (const Machine& machine : machines()) {
    const Error swapped =
        refusal(machine, [](auto& g) { std::swap(g.tilt_cylinder_retracted, g.tilt_cylinder_extended); });
    EXPECT_EQ(swapped.message.code, "tilt-cylinder-stroke-implausible");
    const Error telescope =
        refusal(machine, [](auto& g) { g.tilt_cylinder_retracted = 0.5 * g.tilt_cylinder_extended; });
    EXPECT_EQ(telescope.message.code, "tilt-cylinder-stroke-implausible");
  }
}

TEST(PlausibleLinkageTest, ABoomOutOfProportionIsTheNumberNamed) {
  for (const Machine& machine : machines()) {
    for (const double scale : {0.5, 0.7, 1.3, 2.0, 10.0})
      EXPECT_EQ(field(refusal(machine, [&](auto& g) { g.boom_length = scale * g.boom_length; })),
                "boom_length")
          << machine.name << " times " << scale;
  }
}

TEST(PlausibleLinkageTest, TwoSignsSwappedAreNotBlamedOnTheBoom) {
  EXPECT_EQ(field(refusal(demoMachine(),
                          [](auto& g) {
                            g.lift_boom_pin.along = -g.lift_boom_pin.along;
                            g.bellcrank_pivot.along = -g.bellcrank_pivot.along;
                          })),
            "lift_boom_pin/0");
}

TEST(PlausibleLinkageTest, AStrokeThatTheLoopsCannotFollowNamesTheEndThatIsTooFar) {
  const Error error =
      refusal(demoMachine(), [](auto& g) { g.tilt_cylinder_extended = 1.2 * g.tilt_cylinder_extended; });
  EXPECT_EQ(error.message.code, "linkage-does-not-close");
  EXPECT_EQ(field(error), "tilt_cylinder_extended");
  // The true length lies in the range that the message offers.
  EXPECT_LE(std::get<Amount>(value(error, "low")).value, 1.709);
  EXPECT_GE(std::get<Amount>(value(error, "high")).value, 1.709);
}

TEST(PlausibleLinkageTest, ValuesOfferedMendTheLinkage) {
  // One number wrong, chosen to pass its own range: setting the named field to the nearest value offered is
  // enough.
  for (const Machine& machine : machines()) {
    for (const Number& number : lengths()) {
      for (const double scale : {0.6, 0.75, 1.25, 1.6}) {
        ZBarGeometry g = machine.geometry;
        *number.find(g) = scale * *number.find(g);
        const auto linkage = Linkage::make(g);
        if (linkage || linkage.error().message.code == "linkage-number-implausible" ||
            linkage.error().message.code == "tilt-cylinder-stroke-implausible")
          continue;
        const Error error = refusal(machine, [&](auto& edited) { edited = g; });
        if (error.place.pointer == "/bellcrank_angle" || error.place.pointer == "/bucket_pin_angle") continue;
        for (const Number& named : lengths()) {
          if (named.name != field(error)) continue;
          const double low = std::get<Amount>(value(error, "low")).value;
          const double high = std::get<Amount>(value(error, "high")).value;
          *named.find(g) = Length::fromMetres(0.5 * (low + high));
          EXPECT_TRUE(Linkage::make(g)) << machine.name << " " << number.name << " times " << scale;
        }
      }
    }
  }
}

}  // namespace
}  // namespace hingepin::linkage
