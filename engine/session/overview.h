// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/error.h"
#include "engine/records/verify.h"
#include "engine/session/edge.h"
#include "engine/session/locale.h"
#include "engine/session/moment.h"
#include "engine/session/procedure_words.h"
#include "engine/session/profile.h"
#include "engine/session/when_again.h"
#include "engine/store/store.h"

/// What people see first. All of it is read from the store; its errors may come out of every function.
namespace hingepin::session {

/// What holds for a unit, the most serious first.
enum class UnitState { DoNotUse, Restricted, Due, DueSoon, NotCalibrated, Ready };
/// "do-not-use", "restricted", "due", "due-soon", "not-calibrated", "ready"
[[nodiscard]] std::string_view nameOf(UnitState state);
/// The code of its words in the catalogues: "state-do-not-use", ...; of a lockout they are
/// "state-locked-out".
[[nodiscard]] std::string sentenceOf(UnitState state);

/// A week: time to plan a check into the work (common practice, no source).
inline constexpr std::int64_t kSoon_ms = 7LL * 24 * 3600 * 1000;

/// A mark that restricts, with the procedure that set it: its words stand among those of the procedure.
struct Restriction {
  std::string procedure{};  ///< id
  std::string mark{};       ///< text code
  bool is_tag = false;      ///< "do not use this scale"
};

struct PairState {
  std::string attachment{};
  UnitState state = UnitState::Ready;
  bool calibrated = false;    ///< a job taught this scale
  std::string calibration{};  ///< hash of the numbers, "" where only the machine has them
  std::string record{};       ///< of the job that taught it
  std::optional<std::int64_t> calibrated_utc_ms{};
  std::optional<std::int64_t> due_utc_ms{};  ///< by the soonest of its reasons
  WhenAgain when{};
  std::vector<Restriction> restrictions{};
};

/// A failed or abandoned job that nothing has lifted since.
struct OpenTag {
  std::string job{};
  std::string record{};
  std::string procedure{};  ///< id
  std::string attachment{};
  std::string tag{};  ///< text code
  std::string phase{};
  std::string failed_step{};
  std::int64_t utc_ms = 0;
};

struct RunningJob {
  std::string job{};
  std::string procedure{};  ///< id
  std::string attachment{};
  std::string language{};
  std::string waits_at{};   ///< step or caution, "tag"; "" once it waits for its seal
  std::string waits_for{};  ///< words of the step that it waits at, in the reader's language
  std::string title{};      ///< likewise
  std::string person{};     ///< key in charge
  std::string role{};       ///< that it acts in
  bool for_second_person = false;
  std::int64_t begun_utc_ms = 0;
  std::int64_t last_utc_ms = 0;  ///< of the last event
};

struct UnitOverview {
  std::string id{};
  UnitState state = UnitState::Ready;
  bool practice = false;
  bool locked_out = false;  ///< a lockout was begun that no removal has ended
  bool readable = true;     ///< its profile
  bool has_linkage = true;  ///< its pins are on file; true also where its profile can't be read
  std::vector<PairState> pairs{};
  std::optional<OpenTag> tag{};  ///< the newest that is open
  std::vector<RunningJob> running{};
  std::optional<std::int64_t> due_utc_ms{};  ///< the first of its pairs
};

struct Overview {
  std::vector<UnitOverview> units;  ///< the most serious first, then by id
  int do_not_use = 0;               ///< how many units are in each state
  int restricted = 0;
  int due = 0;
  int due_soon = 0;
  int not_calibrated = 0;
  int ready = 0;
  int running = 0;  ///< jobs
  int waiting_for_second_person = 0;
};

/// Every unit and what holds for it. A unit's state is the most serious of its pairs, its open tags and its
/// lockout; one that nobody taught with any attachment is not calibrated.
[[nodiscard]] Expected<Overview> unitStates(const store::Store& store, std::int64_t utc_ms, const Edge& edge,
                                            const Reader& reader, std::int64_t soon_ms = kSoon_ms);

/// Something that a second person is asked for, or somebody in another role than that of who is in charge.
struct AwaitedConfirmation {
  RunningJob job;
  std::string unit{};
  bool second_person = false;
  std::vector<std::string> roles{};   ///< who may answer
  std::vector<std::string> photos{};  ///< personal objects of this job, for a look from afar
};

/// Something that was confirmed by a second person, or had to be.
struct Confirmation {
  std::string unit{};
  std::string attachment{};
  std::string job{};
  std::string record{};  ///< "" while the job runs
  std::string procedure{};
  std::string step{};
  std::string text{};    ///< words of the step, in the reader's language
  std::string answer{};  ///< "yes", "no", "unconfirmed"
  std::string key{};     ///< who; "" for nobody
  std::string role{};
  std::string device{};
  /// Sealed there, with a code from screen to camera; of a record: proven by its seal.
  bool own_phone = false;
  std::int64_t utc_ms = 0;
  /// "second-person-on-same-phone", "second-person-from-afar", "second-person-missing"
  std::vector<std::string> marks{};
};

struct Confirmations {
  std::vector<AwaitedConfirmation> awaited;  ///< the longest waiting first
  std::vector<Confirmation> confirmed;       ///< the newest first
};

/// @param since_utc_ms how far back what was confirmed is looked for
[[nodiscard]] Expected<Confirmations> confirmations(const store::Store& store, const Edge& edge,
                                                    const Reader& reader, std::int64_t since_utc_ms);

/// A unit that is out on hire.
struct CheckedOut {
  std::string unit{};
  std::string attachment{};
  std::string record{};  ///< of the check-out, for compareRecords
  std::string variant{};
  std::int64_t utc_ms = 0;
};
/// Units whose last check-out that ended done has no later return check (however that ended), the longest out
/// first.
[[nodiscard]] Expected<std::vector<CheckedOut>> checkOuts(const store::Store& store);

/// A check-out and the return check after it.
struct Hire {
  std::string unit{};
  std::string check_out{};     ///< record
  std::string return_check{};  ///< record
  std::int64_t out_utc_ms = 0;
  std::int64_t back_utc_ms = 0;
};
/// The newest first.
[[nodiscard]] Expected<std::vector<Hire>> hiresOf(const store::Store& store, std::string_view unit);

/// What one record says of the scale, for a chart.
struct HistoryPoint {
  std::string record{};
  std::string procedure{};
  std::int64_t utc_ms = 0;
  std::string phase{};
  std::vector<double> zeros_kg{};         ///< indications with an empty bucket that a check looked at
  std::optional<double> zero_kg{};        ///< their mean
  std::optional<double> zero_found_kg{};  ///< the first of the job, before anything was set
  std::optional<double> zero_low_kg{};    ///< limits
  std::optional<double> zero_high_kg{};
  std::optional<double> reference_kg{};    ///< of the proof; on a truck scale the mean net
  std::optional<double> reference_u_kg{};  ///< standard, where the proof tells it
  /// Of the proof, in the order in which they were read; on a truck scale what each error makes of the mean
  /// net.
  std::vector<double> indications_kg{};
  std::optional<double> indication_kg{};        ///< their mean
  std::optional<double> error_percent{};        ///< (mean indication - reference) / reference
  std::optional<double> error_found_percent{};  ///< the first of the job, before anything was taught
  std::optional<double> span{};                 ///< mean indication less mean zero, over the reference
  std::vector<double> found_indications_kg{};   ///< those of the first error of the job
  std::optional<double> spread_kg{};            ///< largest less smallest indication
  std::optional<double> error_limit_percent{};
  std::optional<double> spread_limit_kg{};
  std::string verdict{};     ///< "passed", "failed", "" where there was no proof
  bool calibration = false;  ///< this record taught the scale
};
/// From every record of a pair that has a zero, a proof or a calibration, the oldest first.
/// @param attachment "" for all
[[nodiscard]] Expected<std::vector<HistoryPoint>> historyOf(const store::Store& store, std::string_view unit,
                                                            std::string_view attachment);

struct RecordedJob;
/// What a record's job says of its scale.
[[nodiscard]] HistoryPoint historyPointOf(const store::Store& store, const RecordedJob& job,
                                          const std::string& record);

/// A further signature on a record.
struct RecordSignature {
  std::string name{};
  std::string key{};
  std::string role{};
  std::int64_t utc_ms = 0;
  records::Standing standing = records::Standing::Refused;
};

struct RecordLine {
  std::string name{};
  std::string title{};      ///< of the procedure or event, in the reader's language
  std::string procedure{};  ///< id; "" of a correction or event
  std::string attachment{};
  std::string phase{};  ///< "done", "failed", "abandoned"; "" of a correction or event
  std::int64_t utc_ms = 0;
  std::string key{};
  std::string role{};
  bool practice = false;
  bool taught = false;                    ///< it has a calibration
  std::string amends{};                   ///< of a correction
  std::vector<std::string> amended_by{};  ///< names of corrections
  std::vector<RecordSignature> signatures{};
  records::Standing standing = records::Standing::Refused;
  std::vector<Message> findings{};  ///< about this record
};
/// The newest first. All of the store is verified, so this takes a while for a large one.
/// @param unit "" for all
[[nodiscard]] Expected<std::vector<RecordLine>> recordsOf(const store::Store& store, std::string_view unit,
                                                          const Reader& reader);

/// An entry that must be given, or may be given otherwise.
struct NeededEntry {
  std::string id{};
  std::string value{};  ///< what would hold: of the attachment, the unit, or the procedure; "" for none
  std::string from{};   ///< "attachment", "unit", "procedure"; "" where it must be given
  std::string unit{};   ///< UCUM code
};

struct OfferedVariant {
  std::string id{};
  std::string text{};   ///< in the reader's language
  bool offered = true;  ///< by this unit, where the variants are ways of teaching
};

struct OfferedPrerequisite {
  std::string procedure{};
  std::string title{};  ///< in the reader's language
  bool missing = false;
  bool too_old = false;
};

struct OfferedProcedure {
  std::string id{};
  std::string title{};  ///< in the reader's language
  std::string comes_first{};
  std::vector<std::string> tools{};  ///< likewise
  std::vector<OfferedVariant> variants{};
  std::vector<NeededEntry> entries{};
  std::vector<OfferedPrerequisite> prerequisites{};
  bool can_begin = false;  ///< all prerequisites are there, and each entry has a value
};

/// What a role may begin on a unit now, by title. Procedures of the library.
/// Errors: NotFound "unit-not-in-store", "attachment-not-in-store"; those of the profiles and of allWords.
[[nodiscard]] Expected<std::vector<OfferedProcedure>> proceduresFor(const store::Store& store,
                                                                    std::string_view unit,
                                                                    std::string_view attachment,
                                                                    std::string_view role, const Moment& now,
                                                                    const Edge& edge, const Reader& reader);

}  // namespace hingepin::session
