// SPDX-License-Identifier: Apache-2.0
#pragma once

/// Facts of a Z-bar loader linkage from outside. Source: multibody model of a master thesis, V. Bertolazzo
/// 2017, WheelLoader (fork of Chrono), file src/wheelloader/utilities/ZBarMechanism.h, commit 9fffb22e.
/// Metres, kilograms, degrees. x forward, y up, from the boom pivot (2.115 m above ground); boom frame: along
/// and square to boom pivot -> bucket pin. The source does not give the bucket's floor direction, and marks
/// the bucket's centre of gravity as not confirmed.
namespace hingepin::reference::thesis_linkage {

inline constexpr double kBoomPivotHeight = 2.115;
inline constexpr double kBoomLength = 2.6;
inline constexpr double kLiftFramePin[2] = {0.0, -0.440};
inline constexpr double kLiftBoomPin[2] = {1.2788, 0.0361};  // boom frame
inline constexpr double kTiltFramePin[2] = {0.320, -0.088};
inline constexpr double kRockerPivot[2] = {1.55, 0.518};  // boom frame
inline constexpr double kRockerTiltPin[2] = {-0.497,
                                             -0.2};  // from the pivot, first axis towards the link pin
inline constexpr double kRockerLinkArm = 0.770;
inline constexpr double kRockerAngle_deg = 158.1;  // from the tilt arm to the link arm
inline constexpr double kLinkLength = 0.718;
inline constexpr double kBucketPinDistance = 0.437;
inline constexpr double kTiltLengthSeen[2] = {1.0139, 1.2883};
inline constexpr double kLiftLengthSeen[2] = {1.065, 1.3104};
inline constexpr double kLiftBore = 0.13;
inline constexpr int kLiftCylinders = 2;

inline constexpr double kBoomMass = 1200.0;               // lift cylinders included
inline constexpr double kBoomCentre[2] = {1.300, 0.173};  // boom frame
inline constexpr double kRockerMass = 445.0;              // tilt cylinder included; its centre is not given
inline constexpr double kLinkMass = 56.0;                 // centre at mid length
inline constexpr double kBucketMass = 1305.0;
inline constexpr double kBucketCentreAtStart[2] = {0.15, 0.5};  // from the bucket pin, x and y

// The start pose as drawn, from the boom pivot.
inline constexpr double kStartBoomAngle_deg = -29.58;
inline constexpr double kStartLiftLength = 1.1413;
inline constexpr double kStartTiltLength = 1.1133;
inline constexpr double kStartBucketPin[2] = {2.26, -1.283};
inline constexpr double kStartLiftBoomPin[2] = {1.13, -0.600};

// Figures that were computed from these numbers by other means, as noted beside the source.
inline constexpr double kClosingBoomAngles_deg[2] = {-40.0, 30.0};  // over kTiltLengthSeen
inline constexpr double kClosingPinDistance[2] = {0.40, 0.97};  // bellcrank's link pin to bucket pin, there
inline constexpr double kEmptyMomentAtStart = 52.7e3;           // N.m
inline constexpr double kLiftArmAtStart = 0.4357;
inline constexpr double kEmptyPressureAtStart_bar = 45.6;

}  // namespace hingepin::reference::thesis_linkage
