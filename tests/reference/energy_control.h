// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

/// What the rules of the United States ask for before, during and after work on a machine that could start,
/// move or let go of what it has stored. Numbers of paragraphs are theirs, the gist is in our own words.
/// Sources: 29 CFR 1910.147 (paragraphs (a)(1)(ii)(A), (d), (e), (f)(1), (f)(3)(ii)(D) and (f)(4) read in
/// copies of the CFR, editions 2002 and later); 29 CFR 1926.600(a)(3)(i) (read as an OSHA letter of
/// 2005-05-11 quotes it); 30 CFR 56.14100, 56.14105 and 56.14206 (read). Rows that say so are from memory.
namespace hingepin::reference {

enum class EnergyPart { Before, Lockout, Removal, Test, Group };

struct EnergyControlParagraph {
  std::string_view paragraph;  ///< as a step cites it
  EnergyPart part;
  int order;  ///< within its part, where the rule orders the paragraphs; else 0
  std::string_view gist;
  bool from_memory = false;
};

/// 29 CFR 1910.147: servicing in general industry. (d) begins: the procedure covers these, in this sequence.
inline constexpr EnergyControlParagraph kGeneralIndustry[] = {
    {"29 CFR 1910.147(c)(9)", EnergyPart::Before, 0, "tell those affected before and after", true},
    {"29 CFR 1910.147(d)(1)", EnergyPart::Lockout, 1,
     "know type, size and danger of each energy, and its control"},
    {"29 CFR 1910.147(d)(2)", EnergyPart::Lockout, 2, "shut down in an orderly way"},
    {"29 CFR 1910.147(d)(3)", EnergyPart::Lockout, 3, "find and operate every isolating device"},
    {"29 CFR 1910.147(d)(4)(i)", EnergyPart::Lockout, 4, "authorised people put lock or tag on each device"},
    {"29 CFR 1910.147(d)(4)(ii)", EnergyPart::Lockout, 4, "the lock holds the device at off"},
    {"29 CFR 1910.147(d)(4)(iii)", EnergyPart::Lockout, 4, "the tag forbids to operate the device"},
    {"29 CFR 1910.147(d)(5)(i)", EnergyPart::Lockout, 5, "relieve, disconnect or restrain what is stored"},
    {"29 CFR 1910.147(d)(5)(ii)", EnergyPart::Lockout, 6, "go on verifying where it can build up again"},
    {"29 CFR 1910.147(d)(6)", EnergyPart::Lockout, 7, "verify before the work begins"},
    {"29 CFR 1910.147(e)(1)", EnergyPart::Removal, 1, "things cleared away, machine whole"},
    {"29 CFR 1910.147(e)(2)(i)", EnergyPart::Removal, 2, "everybody in a safe place"},
    {"29 CFR 1910.147(e)(3)", EnergyPart::Removal, 3, "each takes off the device that they put on"},
    {"29 CFR 1910.147(e)(2)(ii)", EnergyPart::Removal, 4,
     "tell those affected: after removal, before the start"},
    {"29 CFR 1910.147(f)(1)(i)", EnergyPart::Test, 1, "for a test: clear away tools"},
    {"29 CFR 1910.147(f)(1)(ii)", EnergyPart::Test, 2, "for a test: people out"},
    {"29 CFR 1910.147(f)(1)(iii)", EnergyPart::Test, 3, "for a test: devices off"},
    {"29 CFR 1910.147(f)(1)(iv)", EnergyPart::Test, 4, "for a test: energise and go on"},
    {"29 CFR 1910.147(f)(1)(v)", EnergyPart::Test, 5, "after a test: off, and controls on again"},
    {"29 CFR 1910.147(f)(2)(i)", EnergyPart::Group, 0, "host and outside firm tell each other", true},
    {"29 CFR 1910.147(f)(3)(ii)(D)", EnergyPart::Group, 0, "in a group, each one puts on their own device"},
    {"29 CFR 1910.147(f)(4)", EnergyPart::Group, 0, "protection goes on over a change of shift"},
};

/// (a)(1)(ii)(A): what 29 CFR 1910.147 does not cover.
inline constexpr std::string_view kNotCoveredByGeneralIndustry = "construction";

/// Where the loader works on a construction site, or in a surface mine or quarry.
inline constexpr EnergyControlParagraph kElsewhere[] = {
    {"29 CFR 1926.600(a)(3)(i)", EnergyPart::Lockout, 0,
     "construction: block what is raised before anybody works under it; lower or block buckets; controls "
     "neutral, "
     "engine stopped, brakes set"},
    {"30 CFR 56.14105", EnergyPart::Lockout, 0,
     "mines: power off and blocked against motion, except to test or adjust"},
    {"30 CFR 56.14211", EnergyPart::Lockout, 0,
     "mines: secure a raised part before anybody works on or under it", true},
};

/// Surface mines: examination before the shift, and what follows a defect.
inline constexpr EnergyControlParagraph kMineExamination[] = {
    {"30 CFR 56.14100(a)", EnergyPart::Before, 0, "the operator inspects the machine before the shift"},
    {"30 CFR 56.14100(c)", EnergyPart::Before, 0, "a dangerous defect: out of service, marked by a tag"},
    {"30 CFR 56.14100(d)", EnergyPart::Before, 0, "a defect that stays: reported and recorded"},
};

}  // namespace hingepin::reference
