// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>

/// Control charts with published figures.
namespace hingepin::reference::control_charts {

/// NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, flow rates of ten batches. Figures from memory,
/// the values also being those of the EWMA example from its eleventh on.
inline constexpr std::array kFlowRates = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};
inline constexpr double kFlowMean = 50.81;
inline constexpr double kFlowMeanRange = 1.8778;
inline constexpr double kFlowHigh = 55.8041;
inline constexpr double kFlowLow = 45.8159;

/// The same, 6.3.2.4: EWMA of weight 0.3 about 50 with a standard deviation of 2.0539; no point outside. Data
/// and printed values as public test suites quote the page.
inline constexpr double kEwmaWeight = 0.3;
inline constexpr double kEwmaCentre = 50.0;
inline constexpr double kEwmaSigma = 2.0539;
inline constexpr double kEwmaHigh = 52.5884;
inline constexpr double kEwmaLow = 47.4115;
struct EwmaPoint {
  double value;
  double shown;  ///< printed to two decimals
};
inline constexpr std::array kEwma = {
    EwmaPoint{52.0, 50.6},  EwmaPoint{47.0, 49.52}, EwmaPoint{53.0, 50.56}, EwmaPoint{49.3, 50.18},
    EwmaPoint{50.1, 50.16}, EwmaPoint{47.0, 49.21}, EwmaPoint{51.0, 49.75}, EwmaPoint{50.1, 49.85},
    EwmaPoint{51.2, 50.26}, EwmaPoint{50.5, 50.33}, EwmaPoint{49.6, 50.11}, EwmaPoint{47.6, 49.36},
    EwmaPoint{49.9, 49.52}, EwmaPoint{51.3, 50.05}, EwmaPoint{47.8, 49.38}, EwmaPoint{51.2, 49.92},
    EwmaPoint{52.6, 50.73}, EwmaPoint{52.4, 51.23}, EwmaPoint{53.6, 51.94}, EwmaPoint{52.1, 51.99}};

/// The same, 6.3.2.3: tabular cumulative sums of group means about 325; first signal at group 14, upwards.
/// Data and printed columns as public test suites quote the page.
inline constexpr double kCusumTarget = 325.0;
inline constexpr double kCusumSlack = 0.3175;
inline constexpr double kCusumDecision = 4.1959;
inline constexpr double kCusumSigma = 0.635;  ///< of a group mean
inline constexpr int kCusumFirstSignal = 14;  ///< counted from 1
struct CusumPoint {
  double value;
  double high;  ///< printed to two decimals
  double low;
};
inline constexpr std::array kCusum = {
    CusumPoint{324.925, 0.0, 0.0},  CusumPoint{324.675, 0.0, 0.01},  CusumPoint{324.725, 0.0, 0.0},
    CusumPoint{324.35, 0.0, 0.33},  CusumPoint{325.35, 0.03, 0.0},   CusumPoint{325.225, 0.0, 0.0},
    CusumPoint{324.125, 0.0, 0.56}, CusumPoint{324.525, 0.0, 0.72},  CusumPoint{325.225, 0.0, 0.17},
    CusumPoint{324.6, 0.0, 0.25},   CusumPoint{324.625, 0.0, 0.31},  CusumPoint{325.15, 0.0, 0.0},
    CusumPoint{328.325, 3.01, 0.0}, CusumPoint{327.25, 4.94, 0.0},   CusumPoint{327.825, 7.45, 0.0},
    CusumPoint{328.5, 10.63, 0.0},  CusumPoint{326.675, 11.99, 0.0}, CusumPoint{327.775, 14.44, 0.0},
    CusumPoint{326.875, 16.0, 0.0}, CusumPoint{328.35, 19.04, 0.0}};

}  // namespace hingepin::reference::control_charts
