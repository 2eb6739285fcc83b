// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>

namespace hingepin::reference {

struct LineResult {
  double intercept, u_intercept, slope, u_slope, covariance, chi_squared;
};

struct Prediction {
  double given, u_given, value, u_value;
};

// y = a + b x, u(y) known. Source: ISO/TS 28037:2010 clause 6.3 example; figures to full precision from the
// documentation of the GUM Tree Calculator (straight_line_functions), which quotes the document.
struct Iso28037Example1 {
  std::array<double, 6> x, y, u_y;
  LineResult result;
  Prediction inverse;  // x from y
  Prediction forward;  // y from x
};
inline constexpr Iso28037Example1 kIso28037Example1{
    {1, 2, 3, 4, 5, 6},
    {3.3, 5.6, 7.1, 9.3, 10.7, 12.1},
    {0.5, 0.5, 0.5, 0.5, 0.5, 0.5},
    {1.86666666666667, 0.465474668125631, 1.75714285714286, 0.119522860933439, -0.05, 1.664761904761908},
    {10.5, 0.5, 4.91327913279133, 0.32203556012891},
    {3.5, 0.2, 8.01666666666667, 0.406409531732455}};

// One unknown SD common to all y, from the residuals. Source: ISO/TS 28037:2010 annex E example, quoted as
// above; chi_squared is the residual sum of squares, recomputed. Inverse: a single response of the same SD;
// printed 4.751(97).
struct Iso28037AnnexE {
  std::array<double, 6> x, y;
  LineResult result;
  double inverse_y, inverse_x, u_inverse_x;
};
inline constexpr Iso28037AnnexE kIso28037AnnexE{
    {1, 2, 3, 4, 5, 6},
    {3.014, 5.225, 7.004, 9.061, 11.201, 12.762},
    {1.172, 0.158875093196181, 1.96357142857143, 0.0407953578791729, -0.00582491428571429, 0.116498285714},
    10.5,
    4.751,
    0.097};

// Errors in x and y, no covariance. Source: ISO/TS 28037:2010 clause 7.4 example, quoted as above: printed a
// = 0.5788, u(a) = 0.4764, b = 2.159, u(b) = 0.1355, cov = -0.0577, chi-squared 2.743. The figures below are
// a refit in the form of York et al. 2004 (adjusted points), which agrees with the printed digits (b rounds
// to 2.160).
struct Iso28037Example3 {
  std::array<double, 6> x, u_x, y, u_y;
  LineResult printed;
  LineResult refit;
};
inline constexpr Iso28037Example3 kIso28037Example3{
    {1.2, 1.9, 2.9, 4.0, 4.7, 5.9},
    {0.2, 0.2, 0.2, 0.2, 0.2, 0.2},
    {3.4, 4.4, 7.2, 8.5, 10.8, 13.5},
    {0.2, 0.2, 0.2, 0.4, 0.4, 0.4},
    {0.5788, 0.4764, 2.159, 0.1355, -0.0577, 2.743},
    {0.578822122, 0.476420630, 2.159656567, 0.135547927, -0.057716939, 2.742676790}};

// Pearson's points with York's weights w = 1/u^2. Source: Pearson 1901; York 1966, Can. J. Phys. 44, 1079;
// coefficients to 13 digits as in the test data of LinearFitXYerrors.jl, re-derived. Standard errors of York
// et al. 2004 with the weights taken as known, recomputed; times sqrt(chi-squared / 8) they are those of the
// same test data (0.359246522551112, 0.070620269528771).
struct PearsonYork {
  std::array<double, 10> x, weight_x, y, weight_y;
  LineResult result;
  double scaled_u_intercept, scaled_u_slope;
};
inline constexpr PearsonYork kPearsonYork{
    {0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4},
    {1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1},
    {5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5},
    {1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500},
    {5.47991022403286, 0.2949707354931, -0.48053340744620, 0.0579850090008, -0.0164725446582, 11.8663531941},
    0.359246522551112,
    0.070620269528771};

}  // namespace hingepin::reference
