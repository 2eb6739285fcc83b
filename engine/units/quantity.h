// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <compare>

namespace hingepin {

/// The physical dimensions that Hingepin reads and writes. Angle is kept apart from a plain number on
/// purpose.
enum class Dimension {
  Number,        // 1, %
  Length,        // m
  Angle,         // rad
  Mass,          // kg
  Time,          // s
  Temperature,   // K
  Pressure,      // Pa
  Voltage,       // V
  Current,       // A
  Force,         // N
  Acceleration,  // m/s2
  Frequency,     // 1/s
  AngularSpeed,  // rad/s
};

/// A value of one dimension, held in the SI unit named above. Made and read by a named unit only.
template <Dimension D>
class Quantity {
 public:
  constexpr Quantity() = default;
  [[nodiscard]] static constexpr Quantity fromSi(double value_si) { return Quantity(value_si); }
  [[nodiscard]] constexpr double inSi() const { return value_si_; }

  constexpr auto operator<=>(const Quantity&) const = default;
  friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value_si_ + b.value_si_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value_si_ - b.value_si_); }
  friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.value_si_); }
  friend constexpr Quantity operator*(double factor, Quantity a) { return Quantity(factor * a.value_si_); }
  friend constexpr Quantity operator*(Quantity a, double factor) { return Quantity(factor * a.value_si_); }
  friend constexpr Quantity operator/(Quantity a, double divisor) { return Quantity(a.value_si_ / divisor); }
  friend constexpr double operator/(Quantity a, Quantity b) { return a.value_si_ / b.value_si_; }

#define HINGEPIN_UNIT(dimension, Unit, factor)                     \
  [[nodiscard]] static constexpr Quantity from##Unit(double value) \
    requires(D == Dimension::dimension)                            \
  {                                                                \
    return Quantity(value * (factor));                             \
  }                                                                \
  [[nodiscard]] constexpr double in##Unit() const                  \
    requires(D == Dimension::dimension)                            \
  {                                                                \
    return value_si_ / (factor);                                   \
  }
  HINGEPIN_UNIT(Number, Ones, 1.0)
  HINGEPIN_UNIT(Number, Percent, 0.01)
  HINGEPIN_UNIT(Length, Metres, 1.0)
  HINGEPIN_UNIT(Length, Millimetres, 1e-3)
  HINGEPIN_UNIT(Angle, Radians, 1.0)
  HINGEPIN_UNIT(Angle, Degrees, 0.017453292519943295)
  HINGEPIN_UNIT(Mass, Kilograms, 1.0)
  HINGEPIN_UNIT(Time, Seconds, 1.0)
  HINGEPIN_UNIT(Temperature, Kelvin, 1.0)
  HINGEPIN_UNIT(Pressure, Pascals, 1.0)
  HINGEPIN_UNIT(Pressure, Bar, 1e5)
  HINGEPIN_UNIT(Voltage, Volts, 1.0)
  HINGEPIN_UNIT(Acceleration, MetresPerSecondSquared, 1.0)
  HINGEPIN_UNIT(Frequency, PerSecond, 1.0)
  HINGEPIN_UNIT(AngularSpeed, RadiansPerSecond, 1.0)
#undef HINGEPIN_UNIT

  /// Celsius is an offset scale, so it is not in the table above.
  [[nodiscard]] static constexpr Quantity fromCelsius(double value)
    requires(D == Dimension::Temperature)
  {
    return Quantity(value + 273.15);
  }
  [[nodiscard]] constexpr double inCelsius() const
    requires(D == Dimension::Temperature)
  {
    return value_si_ - 273.15;
  }

 private:
  constexpr explicit Quantity(double value_si) : value_si_(value_si) {}
  double value_si_ = 0.0;
};

using Fraction = Quantity<Dimension::Number>;
using Length = Quantity<Dimension::Length>;
using Angle = Quantity<Dimension::Angle>;
using Mass = Quantity<Dimension::Mass>;
using Duration = Quantity<Dimension::Time>;
using Temperature = Quantity<Dimension::Temperature>;
using Pressure = Quantity<Dimension::Pressure>;
using Voltage = Quantity<Dimension::Voltage>;
using Acceleration = Quantity<Dimension::Acceleration>;
using AngularSpeed = Quantity<Dimension::AngularSpeed>;

}  // namespace hingepin
