// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <limits>
#include <utility>

namespace hingepin::reference {

// Thermometer calibration line b(t) = y1 + y2 (t - 20 Cel), unweighted least squares.
// Source: JCGM 100:2008 (GUM) Annex H.3; readings confirmed in two public copies, the published results from
// memory, each agreeing with an exact refit.
inline constexpr double kThermometerReference_Cel = 20.0;
// (thermometer reading t_k in Cel, observed correction b_k in Cel)
inline constexpr std::array<std::pair<double, double>, 11> kThermometerPoints{{{21.521, -0.171},
                                                                               {22.012, -0.169},
                                                                               {22.512, -0.166},
                                                                               {23.003, -0.159},
                                                                               {23.507, -0.164},
                                                                               {23.999, -0.165},
                                                                               {24.513, -0.156},
                                                                               {25.002, -0.157},
                                                                               {25.503, -0.159},
                                                                               {26.01, -0.161},
                                                                               {26.511, -0.16}}};
struct ThermometerResult {
  double y1, u_y1, y2, u_y2, correlation, residual_sd, correction_at_30, u_correction_at_30;
};
// As printed.
inline constexpr ThermometerResult kThermometerPrinted{-0.1712, 0.0029, 0.00218, 0.00067,
                                                       -0.930,  0.0035, -0.1494, 0.0041};
// The refit in exact arithmetic, rounded to doubles.
inline constexpr ThermometerResult kThermometerRefit{
    -0.17120379013134998, 0.0028775978351599537, 0.002182697739887278, 0.0006679387732278317,
    -0.9304296030934459,  0.003497563963505284,  -0.1493768127324772,  0.004138595752854945};

// Coverage factors t_p(nu).
// Source: JCGM 100:2008 (GUM) Table G.2, rows and columns of which NIST TN 1297 Table B.1 prints too (read
// there); the figures computed to six decimals. Rounded, they are those of that table, but for nu = 35, p =
// 90 %, which it prints as 1.70.
inline constexpr std::array<double, 6> kCoverages{0.68268949213708590, 0.90, 0.95,
                                                  0.95449973610364158, 0.99, 0.99730020393673979};
struct CoverageRow {
  double degrees_of_freedom;
  std::array<double, 6> factors;
};
inline constexpr std::array<CoverageRow, 28> kCoverageFactors{{
    {1, {1.837337, 6.313752, 12.706205, 13.967730, 63.656741, 235.801498}},
    {2, {1.321277, 2.919986, 4.302653, 4.526537, 9.924843, 19.206744}},
    {3, {1.196881, 2.353363, 3.182446, 3.306822, 5.840909, 9.218940}},
    {4, {1.141627, 2.131847, 2.776445, 2.869309, 4.604095, 6.620206}},
    {5, {1.110507, 2.015048, 2.570582, 2.648649, 4.032143, 5.507080}},
    {6, {1.090569, 1.943180, 2.446912, 2.516524, 3.707428, 4.904065}},
    {7, {1.076713, 1.894579, 2.364624, 2.428805, 3.499483, 4.529974}},
    {8, {1.066528, 1.859548, 2.306004, 2.366416, 3.355387, 4.276633}},
    {9, {1.058728, 1.833113, 2.262157, 2.319806, 3.249836, 4.094255}},
    {10, {1.052562, 1.812461, 2.228139, 2.283678, 3.169273, 3.956937}},
    {11, {1.047568, 1.795885, 2.200985, 2.254863, 3.105807, 3.849936}},
    {12, {1.043439, 1.782288, 2.178813, 2.231348, 3.054540, 3.764277}},
    {13, {1.039969, 1.770933, 2.160369, 2.211798, 3.012276, 3.694188}},
    {14, {1.037013, 1.761310, 2.144787, 2.195288, 2.976843, 3.635801}},
    {15, {1.034463, 1.753050, 2.131450, 2.181163, 2.946713, 3.586423}},
    {16, {1.032242, 1.745884, 2.119905, 2.168940, 2.920782, 3.544128}},
    {17, {1.030290, 1.739607, 2.109816, 2.158260, 2.898231, 3.507498}},
    {18, {1.028560, 1.734064, 2.100922, 2.148849, 2.878440, 3.475471}},
    {19, {1.027017, 1.729133, 2.093024, 2.140494, 2.860935, 3.447233}},
    {20, {1.025633, 1.724718, 2.085963, 2.133025, 2.845340, 3.422151}},
    {25, {1.020404, 1.708141, 2.059539, 2.105088, 2.787436, 3.329635}},
    {30, {1.016947, 1.697261, 2.042272, 2.086844, 2.749996, 3.270334}},
    {35, {1.014491, 1.689572, 2.030108, 2.073997, 2.723806, 3.229098}},
    {40, {1.012657, 1.683851, 2.021075, 2.064459, 2.704459, 3.198768}},
    {45, {1.011235, 1.679427, 2.014103, 2.057100, 2.689585, 3.175526}},
    {50, {1.010100, 1.675905, 2.008559, 2.051248, 2.677793, 3.157148}},
    {100, {1.005025, 1.660234, 1.983972, 2.025309, 2.625891, 3.076756}},
    {std::numeric_limits<double>::infinity(), {1.000000, 1.644854, 1.959964, 2.000000, 2.575829, 3.000000}},
}};

// One-sided quantiles z with Phi(z) = p.
// Source: JCGM 106:2012 table 1 (rounded there to two decimals; from memory, unconfirmed), the figures
// computed to nine decimals.
inline constexpr std::array<std::pair<double, double>, 6> kConformanceQuantiles{{{0.8, 0.841621234},
                                                                                 {0.9, 1.281551566},
                                                                                 {0.95, 1.644853627},
                                                                                 {0.975, 1.959963985},
                                                                                 {0.99, 2.326347874},
                                                                                 {0.999, 3.090232306}}};
// Conformance with an upper limit T_U = -5.40 V of a value -5.47 V, u = 0.05 V: probability 0.92.
// Source: JCGM 106:2012 clause 7 example (from memory, unconfirmed as to the wording; recomputed from the
// normal distribution).
inline constexpr double kZenerLimit_V = -5.40;
inline constexpr double kZenerValue_V = -5.47;
inline constexpr double kZenerUncertainty_V = 0.05;
inline constexpr double kZenerConformance = 0.9192433407662289;

}  // namespace hingepin::reference
