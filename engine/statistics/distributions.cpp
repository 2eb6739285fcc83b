// SPDX-License-Identifier: Apache-2.0
#include "engine/statistics/distributions.h"

#include <algorithm>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <limits>

namespace hingepin::statistics {
namespace {

namespace policies = boost::math::policies;

// No exception, and no promotion to long double, which is not the same type on every processor.
using Policy = policies::policy<
    policies::domain_error<policies::ignore_error>, policies::pole_error<policies::ignore_error>,
    policies::overflow_error<policies::ignore_error>, policies::underflow_error<policies::ignore_error>,
    policies::denorm_error<policies::ignore_error>, policies::evaluation_error<policies::ignore_error>,
    policies::rounding_error<policies::ignore_error>,
    policies::indeterminate_result_error<policies::ignore_error>, policies::promote_double<false>>;
using Normal = boost::math::normal_distribution<double, Policy>;
using StudentsT = boost::math::students_t_distribution<double, Policy>;
using ChiSquared = boost::math::chi_squared_distribution<double, Policy>;

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

bool isProbability(double p) { return p >= 0.0 && p <= 1.0; }

/// The upper quantile, for tails too small to be told from 1 in the lower one.
double studentUpperQuantile(double tail, double degrees_of_freedom) {
  if (!isProbability(tail) || !(degrees_of_freedom > 0.0)) return kNan;
  if (tail == 0.0) return kInfinity;
  if (tail == 1.0) return -kInfinity;
  if (std::isinf(degrees_of_freedom)) return quantile(complement(Normal(), tail));
  return quantile(complement(StudentsT(degrees_of_freedom), tail));
}

}  // namespace

double normalCdf(double z) { return 0.5 * std::erfc(-z / std::sqrt(2.0)); }

double normalQuantile(double probability) {
  if (!isProbability(probability)) return kNan;
  if (probability == 0.0) return -kInfinity;
  if (probability == 1.0) return kInfinity;
  return quantile(Normal(), probability);
}

double studentCdf(double t, double degrees_of_freedom) {
  if (std::isnan(t) || !(degrees_of_freedom > 0.0)) return kNan;
  if (std::isinf(degrees_of_freedom) || std::isinf(t)) return normalCdf(t);
  return cdf(StudentsT(degrees_of_freedom), t);
}

double studentQuantile(double probability, double degrees_of_freedom) {
  if (!isProbability(probability)) return kNan;
  return probability < 0.5 ? -studentUpperQuantile(probability, degrees_of_freedom)
                           : studentUpperQuantile(1.0 - probability, degrees_of_freedom);
}

double chiSquaredTail(double chi_squared, double degrees_of_freedom) {
  if (std::isnan(chi_squared) || !(degrees_of_freedom > 0.0) || std::isinf(degrees_of_freedom)) return kNan;
  if (chi_squared <= 0.0) return 1.0;
  if (std::isinf(chi_squared)) return 0.0;
  return cdf(complement(ChiSquared(degrees_of_freedom), chi_squared));
}

double chiSquaredQuantile(double probability, double degrees_of_freedom) {
  if (!isProbability(probability) || !(degrees_of_freedom > 0.0) || std::isinf(degrees_of_freedom))
    return kNan;
  if (probability == 0.0) return 0.0;
  if (probability == 1.0) return kInfinity;
  return quantile(ChiSquared(degrees_of_freedom), probability);
}

double coverageFactor(double coverage, double degrees_of_freedom) {
  // A whole number that came out of a formula a rounding error too small is not truncated to the one below.
  const double whole = std::floor(degrees_of_freedom * (1.0 + 1e-9));
  return studentUpperQuantile((1.0 - coverage) / 2.0,
                              std::isnan(degrees_of_freedom) ? kNan : std::max(1.0, whole));
}

}  // namespace hingepin::statistics
