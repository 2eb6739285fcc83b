// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/procedures/procedure.h"

namespace hingepin::procedures {

enum class EventType {
  Start,
  Acknowledge,  ///< a caution was read; `about` is the caution
  ZoneClear,    ///< the press before a movement
  Begin,        ///< of a hold
  Answer,
  Reading,
  Evaluate,
  Interrupt,
  Resume,
  GoBack,    ///< to the step that the prompt names: it and what came since is done again
  TakeOver,  ///< by somebody else, or by the same person in another role
  Abandon,
};

/// How what an event says came about: a press or a number typed from an instrument, a log, a live feed, or a
/// number typed from the machine's monitor.
enum class How { Typed, Log, Live, Monitor };

/// What the yard allows where a second person should confirm and is not there: nothing, a look from afar at a
/// photo, or also nobody, which the record then says.
enum class LoneWork { NotAllowed, PhotoFromAfar, Unconfirmed };

/// Another procedure that ended done on this unit. The age is missing where no clock that nobody can set
/// knows it; it then counts as too old.
struct Completed {
  std::string procedure{};
  std::optional<std::int64_t> age_ms{};
  bool operator==(const Completed&) const = default;
};

struct StartOptions {
  std::string variant{};
  LoneWork lone_work = LoneWork::NotAllowed;
  std::map<std::string, std::string, std::less<>> entries{};  ///< quantities, by entry
  std::vector<Completed> completed{};
  bool operator==(const StartOptions&) const = default;
};

inline constexpr std::int64_t kMostInteger = 9007199254740991;  ///< 2^53 - 1: exact in every JSON reader

/// Something that happened, as the journal holds it. Times and ages are at most kMostInteger either way.
struct Event {
  EventType type = EventType::Answer;
  std::int64_t at_ms = 0;                     ///< of the monotonic clock since the phone started, >= 0
  std::string boot{};                         ///< names that start of the phone
  std::optional<std::int64_t> wall_utc_ms{};  ///< for information only; no rule looks at it
  std::string who{};                          ///< key
  std::string role{};                         ///< in which the key acts; the caller has checked that it may
  std::string device{};
  How how = How::Typed;
  std::string about{};                ///< step, or caution that is acknowledged
  std::string answer{};               ///< see answersTo
  std::string value{};                ///< a quantity, a note or the monitor's words, as typed
  std::vector<std::string> hashes{};  ///< SHA-256, hexadecimal: photos, files, logs
  bool sure = false;                  ///< of a reading that was doubted: it is as typed
  std::string
      confirmation{};  ///< of a second person on their own phone: what they sealed; the caller checked it
  std::optional<StartOptions> start{};
  bool operator==(const Event&) const = default;
};

enum class Phase { NotStarted, Running, MakingSafe, Tagging, Done, Failed, Abandoned };

enum class Outcome {
  Passed,
  Failed,
  Doubted,  ///< a reading that is not plausible and not confirmed
  Expired,  ///< a check that found a reading too old and had it read again
  More,     ///< nothing is wrong: more of the same is read, and what was read counts
};

/// An event that answered a step, and what came of it. None is ever removed.
struct Try {
  Event event{};
  Outcome outcome = Outcome::Passed;
  bool counts = true;    ///< false: failed, or done again since
  std::string result{};  ///< of a check: the number that was compared, as a quantity
  std::string reason{};  ///< of a check: code of why there is no number, of a proof also of its verdict
  std::string limit{};   ///< of a proof: what `result` was held against
  int more{};            ///< of a proof that is not decided: how many readings more would; 0 where none would
  std::string step{};    ///< of a survey: what disagrees, else what would help most; or ""
  std::map<std::string, int, std::less<>> rounds{};  ///< of each repeat around the step, from 0
  bool operator==(const Try&) const = default;
};

/// Something that the record must say beside its results: `mark` is a text code of the procedure, or one of
/// "second-person-on-same-phone", "second-person-from-afar", "second-person-missing",
/// "implausible-confirmed", "signer-absent", "signer-refused".
struct Mark {
  std::string step{};
  std::string mark{};
  bool operator==(const Mark&) const = default;
};

/// A number that was not plausible, and what may have been meant.
struct Doubt {
  std::string value{};
  std::vector<std::string> suggestions{};
  bool operator==(const Doubt&) const = default;
};

/// Where a job is. A value: the same events from a default State give the same State.
struct State {
  Phase phase = Phase::NotStarted;
  StartOptions start{};
  std::string person{};  ///< in charge
  std::string role{};
  std::string device{};
  bool paused = false;
  std::size_t position = 0;  ///< in `steps`, or in `make_safe` while making safe
  std::vector<std::string> reading_again{};
  std::map<std::string, int, std::less<>> rounds{};    ///< of each repeat, those that are complete
  std::map<std::string, int, std::less<>> failures{};  ///< of each step, over the whole job
  std::set<Hazard> open{};
  std::vector<std::string> unread{};  ///< cautions to be read again after an interruption
  bool zone_clear = false;
  std::optional<std::int64_t> held_since_ms{};
  std::optional<Doubt> doubt{};
  std::vector<Mark> marks{};
  std::string failed_step{};
  bool abandoned = false;
  std::string boot{};
  std::vector<std::string> old_boots{};
  std::int64_t at_ms = 0;
  std::vector<Try> tries{};
  bool operator==(const State&) const = default;
};

/// A value that a check looks at.
struct Observation {
  const Step* step;
  double value_si;  ///< 0 for a pass
  std::int64_t at_ms;
  std::string boot;
  std::vector<std::string> hashes;  ///< of a pass: its log
};

/// Gives the largest residual of a fit, in SI. An error of kind Insufficient fails the check with its code;
/// any other leaves the job where it is.
using Measure = std::function<Expected<double>(const Check&, std::span<const Observation>)>;

/// What came of a check.
struct Verdict {
  bool passed = false;
  std::string result{};
  std::string reason{};
  std::string limit{};
  bool undecided = false;                  ///< of a proof: neither yes nor no yet
  int more = 0;                            ///< then: as in Try
  std::string step{};                      ///< as in Try
  std::optional<std::size_t> set_aside{};  ///< the try that no longer counts, by its index
};

/// Judges a check that isJudged, by the readings of the state and the unit. An error of kind
/// Insufficient fails the check with its code; any other leaves the job where it is.
using Judge = std::function<Expected<Verdict>(const Step&)>;

/// One step of the job. Whoever opens a journal again after a stop sends Interrupt first, so that the job
/// waits for a person. REQUIRES: a procedure without findings (see lint.h); with another one it still gives
/// a state or an error, but the job may have no end.
/// Errors: InvalidInput, with the state unchanged: the event is not the one awaited, or its author, time,
/// value or evidence are not what the step asks for.
[[nodiscard]] Expected<State> apply(const Procedure& procedure, State state, const Event& event,
                                    const Measure& measure = {}, const Judge& judge = {});

/// What the job waits for.
enum class Ask {
  Start,
  Resume,
  Acknowledge,
  ZoneClear,
  Begin,
  Hold,
  Answer,
  Reading,
  Doubt,
  Evaluate,
  Tag,
  Nothing,  ///< the job has ended
};

struct Prompt {
  Ask ask = Ask::Nothing;
  std::string about{};  ///< what the next event names: a step, a caution, or "tag"
  Message text{};  ///< of the step, with the values that its words may use; of the press if one is asked for
  std::string detail{};
  std::string caution{};
  std::vector<std::string> answers{};
  std::vector<std::string> suggestions{};        ///< for a doubted reading
  std::optional<std::int64_t> finished_at_ms{};  ///< of a hold
  bool by_itself = false;                        ///< no person need press
  std::optional<std::size_t> after_failure{};    ///< index of the try that led back here
  std::string back_to{};  ///< the step that may be done again now, since nothing moved after it; or ""
};

[[nodiscard]] Prompt prompt(const Procedure& procedure, const State& state);

/// A step's text with the values that its words may use, as for a prompt.
[[nodiscard]] Message textOf(const Procedure& procedure, const State& state, const Step& step);

/// What an answer to a step may be. reading: "skipped" where it is optional; confirm: "yes", "no", and for a
/// second person "unconfirmed"; monitor: its ids; hold, pose, pass: "done", "failed"; evidence: "taken",
/// "skipped"; note: "written", "skipped"; sign: "signed", "absent", "refused".
[[nodiscard]] std::vector<std::string> answersTo(const Step& step);

/// The counting values of a step, oldest first.
[[nodiscard]] std::vector<Observation> observationsOf(const Procedure& procedure, const State& state,
                                                      std::string_view step);

/// Whether the job has ended, in whichever way.
[[nodiscard]] bool hasEnded(Phase phase);

}  // namespace hingepin::procedures
