// SPDX-License-Identifier: Apache-2.0
#include "engine/session/demo_yard.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <tuple>
#include <utility>

#include "engine/procedures/library.h"
#include "engine/session/job.h"
#include "engine/session/job_record.h"
#include "engine/session/people.h"
#include "engine/session/practice_answers.h"
#include "engine/session/yard.h"

namespace hingepin::session {
namespace {

using store::Store;

constexpr std::int64_t kMinute_ms = 60'000;
constexpr std::int64_t kHour_ms = 60 * kMinute_ms;
constexpr std::int64_t kDay_ms = 24 * kHour_ms;
constexpr std::int64_t kHistory_ms = 230 * kDay_ms;
constexpr int kMostAnswers = 3000;  // of one job: far more than any procedure takes

/// An invented loader.
struct DemoUnit {
  const char* id;
  double size;  ///< lengths, over those of the practice unit
  int rated_payload_kg;
  int bore_mm;
  int rod_mm;
  bool linkage;
  const char* indication;  ///< UCUM code of its monitor
  const char* step;        ///< last digit
  const char* pressure;    ///< likewise
  const char* recheck_after;
};

constexpr std::array kUnits = {
    DemoUnit{"L-27", 1.0, 4500, 130, 75, true, "kg", "5 kg", "bar", "8760 h"},
    DemoUnit{"L-11", 0.78, 2400, 100, 60, false, "[lb_av]", "10 [lb_av]", "[psi]", "4320 h"},
    DemoUnit{"L-14", 0.86, 3000, 110, 65, true, "kg", "5 kg", "bar", "2160 h"},
    DemoUnit{"L-31", 1.1, 5500, 140, 80, true, "[ston_av]", "0.01 [ston_av]", "[psi]", "8760 h"},
    DemoUnit{"L-33", 1.14, 6000, 150, 90, true, "t", "0.01 t", "bar", "8760 h"},
    DemoUnit{"L-36", 0.92, 3500, 115, 70, false, "kg", "10 kg", "bar", "8760 h"},
    DemoUnit{"L-40", 1.22, 7000, 160, 90, false, "t", "0.01 t", "bar", "8760 h"},
    DemoUnit{"L-42", 1.0, 4500, 130, 75, true, "kg", "5 kg", "bar", "8760 h"},
    DemoUnit{"L-45", 0.7, 1900, 90, 55, false, "[lb_av]", "10 [lb_av]", "[psi]", "8760 h"},
    DemoUnit{"L-48", 1.3, 8500, 170, 95, true, "t", "0.02 t", "bar", "8760 h"},
};

struct DemoAttachment {
  const char* id;
  int coupler_kg;
  int bucket_kg;
  const char* upper_height;
};
constexpr std::array kAttachments = {
    DemoAttachment{"GP-1.6", 150, 620, "2.7 m"},  DemoAttachment{"GP-2.0", 210, 860, "3 m"},
    DemoAttachment{"GP-2.7", 320, 1250, "3.4 m"}, DemoAttachment{"LM-4.5", 320, 1480, "3.4 m"},
    DemoAttachment{"GP-3.4", 390, 1600, "3.6 m"}, DemoAttachment{"GP-4.6", 520, 2250, "3.9 m"}};

std::string unitText(const DemoUnit& unit) {
  const auto length = [&](double practice_m) { return fmt::format("\"{:.3f} m\"", practice_m * unit.size); };
  const std::string linkage = fmt::format(
      R"(,"linkage":{{"boom_length":{},"boom_pivot_height":{},"lift_frame_pin":[{},{}],"lift_boom_pin":[{},{}],)"
      R"("tilt_frame_pin":[{},{}],"bellcrank_pivot":[{},{}],"bellcrank_tilt_arm":{},"bellcrank_link_arm":{},)"
      R"("bellcrank_angle":"184 deg","link_length":{},"bucket_pin_distance":{},"bucket_pin_angle":"94 deg",)"
      R"("tilt_cylinder_retracted":{},"tilt_cylinder_extended":{}}})",
      length(2.55), length(1.95), length(0.08), length(-0.53), length(1.5), length(-0.24), length(0.164),
      length(-0.158), length(1.543), length(0.487), length(0.71), length(0.792), length(0.609), length(0.307),
      length(1.364), length(1.709));
  return fmt::format(
      R"({{"format":"hingepin-unit/1","unit":{{"id":"{}","lift_cylinders":{{"count":2,"bore":"{} mm",)"
      R"("rod":"{} mm"}},"rated_payload":"{} kg","weigh_window":["-8 deg","18 deg"]{}}},)"
      R"("gravity":"9.80665 m/s2","monitor":[{{"quantity":"indication","unit":"{}","step":"{}"}},)"
      R"({{"quantity":"oil-temperature","unit":"Cel","step":"1 Cel"}},)"
      R"({{"quantity":"boom-angle","unit":"deg","step":"0.1 deg"}},)"
      R"({{"quantity":"boom-sensor","unit":"V","step":"0.01 V"}},)"
      R"({{"quantity":"bucket-sensor","unit":"V","step":"0.01 V"}},)"
      R"({{"quantity":"head-pressure","unit":"{}","step":"1 {}"}},)"
      R"({{"quantity":"rod-pressure","unit":"{}","step":"1 {}"}},)"
      R"({{"quantity":"operating-hours","unit":"h","step":"1 h"}},)"
      R"({{"quantity":"fuel-level","unit":"%","step":"5 %"}}],)"
      R"("teaching":["own-routine","typed-readings","logged"],)"
      R"("entries":{{"oil-minimum":"40 Cel","window-low":"-5 deg","window-high":"15 deg"}},)"
      R"("recheck_after":"{}","practice":true}})",
      unit.id, unit.bore_mm, unit.rod_mm, unit.rated_payload_kg, unit.linkage ? linkage : "", unit.indication,
      unit.step, unit.pressure, unit.pressure, unit.pressure, unit.pressure, unit.recheck_after);
}

std::string attachmentText(const DemoAttachment& attachment) {
  return fmt::format(
      R"({{"format":"hingepin-attachment/1","attachment":{{"id":"{}","coupler":"{} kg","bucket":"{} kg",)"
      R"("payload_center":["0.6 m","0.45 m"],"heel":["-0.1 m","-0.22 m"],"cutting_edge":["1.22 m","-0.22 m"]}},)"
      R"("entries":{{"upper-height":"{}","lower-height":"300 mm"}}}})",
      attachment.id, attachment.coupler_kg, attachment.bucket_kg, attachment.upper_height);
}

/// A job of the history.
struct Task {
  std::int64_t utc_ms;
  std::string unit;
  std::string attachment;
  std::string procedure;
  std::string variant{};
  std::string role = "technician";
  PracticeScale scale{};
  PracticeWishes wishes{};
  std::string until{};     ///< left there, running
  bool from_afar = false;  ///< the second person looks at a photo
  bool countersigned = false;
  std::string correction{};
  std::int64_t phone_started_utc_ms = 0;
};

class Timetable {
 public:
  explicit Timetable(std::int64_t now_utc_ms) : now_utc_ms_(now_utc_ms) {}

  /// A morning so many days ago; today's work began three hours ago.
  [[nodiscard]] std::int64_t morning(int days_ago) const {
    return days_ago == 0 ? now_utc_ms_ - 3 * kHour_ms : now_utc_ms_ - days_ago * kDay_ms - 5 * kHour_ms;
  }
  /// A walk-round, then the job, half an hour later.
  void add(int days_ago, Task task) {
    Task walk{.utc_ms = morning(days_ago),
              .unit = task.unit,
              .attachment = task.attachment,
              .procedure = "walk-round",
              .role = task.role,
              .scale = task.scale,
              .phone_started_utc_ms = morning(days_ago) - kHour_ms};
    tasks_.push_back(std::move(walk));
    addAlone(days_ago, std::move(task));
  }
  void addAlone(int days_ago, Task task) {
    task.utc_ms = morning(days_ago) + 30 * kMinute_ms;
    task.phone_started_utc_ms = morning(days_ago) - kHour_ms;
    tasks_.push_back(std::move(task));
  }
  [[nodiscard]] std::vector<Task> inOrder() {
    std::ranges::sort(tasks_, {}, [](const Task& task) { return std::tie(task.utc_ms, task.unit); });
    return std::move(tasks_);
  }

 private:
  std::int64_t now_utc_ms_;
  std::vector<Task> tasks_;
};

/// A proof with what a scale has drifted to.
Task proof(const char* unit, const char* attachment, double mass_kg, double zero_kg, double span,
           double hours) {
  return {.utc_ms = 0,
          .unit = unit,
          .attachment = attachment,
          .procedure = "shift-proof",
          .variant = "known-mass",
          .role = "operator",
          .scale = {.zero_kg = zero_kg, .span = span, .mass_kg = mass_kg, .hours = hours}};
}

Task teaching(const char* unit, const char* attachment, double mass_kg, const char* variant, double hours) {
  return {.utc_ms = 0,
          .unit = unit,
          .attachment = attachment,
          .procedure = "after-attachment-change",
          .variant = variant,
          .scale = {.zero_kg = 12.0, .span = 1.004, .mass_kg = mass_kg, .hours = hours}};
}

std::vector<Task> history(std::int64_t now_utc_ms) {
  Timetable table(now_utc_ms);
  // Taught by its own numbers after a change of bucket; proofs each month, drifting slowly before and after.
  table.add(221, teaching("L-27", "GP-2.7", 2000, "own-routine", 3620));
  for (int month = 0; month < 4; ++month) {
    table.add(190 - 30 * month,
              proof("L-27", "GP-2.7", 2000, 8.0 + 9.0 * month, 1.0 + 0.0012 * month, 3700 + 105.0 * month));
  }
  Task logged = teaching("L-27", "LM-4.5", 2000, "logged", 4150);
  logged.scale.zero_kg = 210.0;  // what the heavier bucket weighs more
  logged.scale.span = 1.012;
  logged.countersigned = true;
  table.add(72, std::move(logged));
  table.add(44, proof("L-27", "LM-4.5", 2000, 6, 1.0005, 4230));
  table.add(13, proof("L-27", "LM-4.5", 2000, 14, 1.0016, 4318));

  // Overdue since two weeks.
  table.add(194, teaching("L-11", "GP-1.6", 1000, "own-routine", 1240));
  for (int month = 0; month < 5; ++month) {
    table.add(165 - 33 * month,
              proof("L-11", "GP-1.6", 1000, -3.0 - 2.5 * month, 1.0 - 0.0009 * month, 1310 + 88.0 * month));
  }

  // Due in four days.
  table.add(86, teaching("L-14", "GP-2.0", 1500, "own-routine", 5020));
  table.add(55, proof("L-14", "GP-2.0", 1500, 5, 1.001, 5150));
  table.add(24, proof("L-14", "GP-2.0", 1500, 9, 1.0021, 5275));

  // A proof that failed yesterday: the span had crept up before.
  table.add(150, teaching("L-31", "GP-3.4", 2500, "own-routine", 7030));
  for (int month = 0; month < 4; ++month) {
    table.add(124 - 31 * month,
              proof("L-31", "GP-3.4", 2500, 5.0 + 8.0 * month, 1.001 + 0.0021 * month, 7150 + 140.0 * month));
  }
  Task failed = proof("L-31", "GP-3.4", 2500, 46, 1.021, 7640);
  failed.wishes.failing["mass-error"] = Failing::Always;
  table.add(1, std::move(failed));

  // In use with a restriction: the oil was cold.
  table.add(118, teaching("L-33", "GP-3.4", 2500, "own-routine", 2210));
  table.add(62, proof("L-33", "GP-3.4", 2500, 4, 1.0008, 2390));
  Task cold = proof("L-33", "GP-3.4", 2500, 11, 1.002, 2555);
  cold.wishes.failing["oil"] = Failing::Always;
  table.add(2, std::move(cold));

  // Out on hire.
  Task locked{.utc_ms = 0,
              .unit = "L-36",
              .attachment = "GP-2.0",
              .procedure = "lockout",
              .variant = "boom-down",
              .wishes = {.failing = {}, .says = {{"place", {"workshop"}}}},
              .from_afar = true};
  table.addAlone(36, locked);
  locked.procedure = "lockout-removal";
  locked.wishes = {};
  locked.from_afar = false;
  locked.utc_ms = 0;
  table.addAlone(35, std::move(locked));
  table.add(34, teaching("L-36", "GP-2.0", 1500, "own-routine", 6120));
  Task out{.utc_ms = 0,
           .unit = "L-36",
           .attachment = "GP-2.0",
           .procedure = "check-out",
           .variant = "known-mass-photos",
           .role = "yard-clerk",
           .scale = {.zero_kg = 4, .mass_kg = 1500, .hours = 6134, .fuel_percent = 95},
           .wishes = {.failing = {}, .says = {{"attachment-number", {"GP-2.0"}}}}};
  table.add(16, out);

  // Came back otherwise than it left.
  table.add(140, teaching("L-40", "GP-4.6", 3000, "own-routine", 3010));
  out.unit = "L-40";
  out.attachment = "GP-4.6";
  out.scale = {.zero_kg = 8, .mass_kg = 3000, .hours = 3140, .fuel_percent = 95};
  out.wishes.says["attachment-number"] = {"GP-4.6"};
  table.add(51, out);
  out.procedure = "return-check";
  out.scale = {.zero_kg = 75,
               .zero_after_kg = 4,
               .span = 1.006,
               .span_after = 1.006,
               .mass_kg = 3000,
               .hours = 3297,
               .fuel_percent = 40,
               .tread_mm = 34};
  out.wishes.failing = {{"glass", Failing::Always}, {"bucket", Failing::Always}};
  out.wishes.says["damage"] = {"left window cracked; cutting edge bent at the corner"};
  out.wishes.says["customer-remark"] = {"window was cracked before"};
  out.wishes.says["customer-signs"] = {"refused"};
  out.correction = "Fuel was 45 %, not 40 %.";
  table.addAlone(20, std::move(out));

  // In the workshop: the second person is awaited.
  table.add(171, teaching("L-42", "GP-2.7", 2000, "own-routine", 8110));
  table.add(75, proof("L-42", "GP-2.7", 2000, 12, 1.0014, 8420));
  Task lockout{.utc_ms = 0,
               .unit = "L-42",
               .attachment = "GP-2.7",
               .procedure = "lockout",
               .variant = "boom-down",
               .wishes = {.failing = {}, .says = {{"place", {"workshop, bay 2"}}}},
               .until = "second"};
  table.addAlone(0, std::move(lockout));

  // New here: nobody has taught it, and somebody has begun to teach the next.
  table.addAlone(3, {.utc_ms = 0,
                     .unit = "L-45",
                     .attachment = "GP-1.6",
                     .procedure = "walk-round",
                     .role = "yard-clerk",
                     .scale = {.hours = 12}});
  Task begun = teaching("L-48", "GP-4.6", 3000, "typed-readings", 260);
  begun.until = "level-angle";
  table.add(0, std::move(begun));
  return table.inOrder();
}

/// A small picture (BMP, 24 bit): stripes that differ from picture to picture, for there is no real one.
std::string picture(std::uint32_t number) {
  constexpr int kWidth = 48;
  constexpr int kHeight = 36;
  constexpr std::uint32_t kHead = 54;
  constexpr std::uint32_t kBytes = kHead + 3U * kWidth * kHeight;
  std::string bytes = "BM";
  const auto add = [&](std::uint32_t value, int count) {
    for (int byte = 0; byte < count; ++byte) bytes += static_cast<char>(value >> (8 * byte) & 0xFFU);
  };
  add(kBytes, 4);
  add(0, 4);
  add(kHead, 4);
  add(40, 4);
  add(kWidth, 4);
  add(kHeight, 4);
  add(1, 2);
  add(24, 2);
  add(0, 4);
  add(kBytes - kHead, 4);
  add(2835, 4);  // 72 dots an inch
  add(2835, 4);
  add(0, 4);
  add(0, 4);
  for (int row = 0; row < kHeight; ++row) {
    for (int column = 0; column < kWidth; ++column) {
      const std::uint32_t stripe = (static_cast<std::uint32_t>(row + column) / 6 + number) % 5;
      add(0x40 + 0x20 * stripe, 1);
      add(0x60 + 0x10 * (number % 7), 1);
      add(0xB0 - 0x18 * stripe, 1);
    }
  }
  return bytes;
}

class Filler {
 public:
  Filler(Store& store, const DemoYard& yard, const records::FillBytes& fill, const Edge& edge)
      : store_(store), yard_(yard), fill_(fill), edge_(edge) {}

  Expected<void> makeYardOf(std::int64_t from_utc_ms);
  Expected<void> work(const Task& task);

 private:
  [[nodiscard]] const records::SecretKey& keyOf(std::string_view role) const {
    const auto found = std::ranges::find(demoPeople(), role, &DemoPerson::role);
    return *yard_.keys[static_cast<std::size_t>(found - demoPeople().begin())];
  }
  /// In that role; the safety lead has a phone of their own.
  [[nodiscard]] Sealer sealer(const std::string& role) const {
    const records::SecretKey& key = keyOf(role);
    const bool lead = role == "safety-lead";
    return {
        .key = key, .role = role, .installation = lead ? key.id() : yard_.installation, .epoch = yard_.epoch};
  }
  Expected<void> handInAnswer(OpenJob& job, PracticePerson& person, const Task& task);

  Store& store_;
  const DemoYard& yard_;
  const records::FillBytes& fill_;
  const Edge& edge_;
  Moment now_{};
  std::uint32_t pictures_ = 0;
  int jobs_ = 0;
};

Expected<void> Filler::makeYardOf(std::int64_t from_utc_ms) {
  std::vector<records::Signer> signers;
  for (const DemoPerson& person : demoPeople()) {
    signers.push_back({.key = keyOf(person.role).publicKey(),
                       .role = person.role,
                       .valid_from_utc_ms = from_utc_ms,
                       .valid_until_utc_ms = {}});
  }
  const auto made = makeYard(store_, yard_.yard_key, std::move(signers), from_utc_ms);
  if (!made) return std::unexpected(made.error());
  for (const DemoPerson& person : demoPeople()) {
    const auto named = keepName(store_, keyOf(person.role).id(), person.name, fill_, from_utc_ms);
    if (!named) return std::unexpected(named.error());
  }
  for (const DemoUnit& unit : kUnits) {
    const std::string text = unitText(unit);
    if (const auto read = readUnitProfile(text, unit.id, edge_); !read) return std::unexpected(read.error());
    if (auto put = store_.putUnit({.id = unit.id, .profile = text}); !put) return put;
  }
  for (const DemoAttachment& attachment : kAttachments) {
    const std::string text = attachmentText(attachment);
    if (const auto read = readAttachmentProfile(text, attachment.id, edge_); !read)
      return std::unexpected(read.error());
    if (auto put = store_.putAttachment({.id = attachment.id, .profile = text}); !put) return put;
  }
  return {};
}

Expected<void> Filler::handInAnswer(OpenJob& job, PracticePerson& person, const Task& task) {
  Expected<PracticeAnswer> answer = person.answer(job);
  if (!answer) return std::unexpected(std::move(answer.error()));
  procedures::Event event = std::move(answer->event);
  now_.at_ms += answer->takes_ms;
  now_.utc_ms += answer->takes_ms;
  if (answer->not_before_ms && now_.at_ms < *answer->not_before_ms) {
    now_.utc_ms += *answer->not_before_ms - now_.at_ms;
    now_.at_ms = *answer->not_before_ms;
  }
  const auto keep = [&](std::string_view bytes, const std::string& file) -> Expected<void> {
    Expected<std::string> name = keepFile(store_, job, event.about, bytes, file, fill_, now_, edge_);
    if (!name) return std::unexpected(std::move(name.error()));
    event.hashes.push_back(*std::move(name));
    return {};
  };
  if (answer->file == FileNeed::Log) {
    if (auto kept = keep(answer->log, event.about + ".csv"); !kept) return kept;
  } else if (answer->file != FileNeed::None) {
    if (auto kept = keep(picture(++pictures_), "picture.bmp"); !kept) return kept;
  }
  const bool on_glass = answer->file == FileNeed::Signature;
  if (on_glass) {
    if (event.role.empty()) event.role = job.state.role;
  } else if (!event.role.empty()) {
    if (answer->second_person) {
      event.role = "safety-lead";
      if (task.from_afar) {
        if (auto kept = keep(picture(++pictures_), "picture.bmp"); !kept) return kept;
      }
    }
    event.who = keyOf(event.role).id();
    event.device = yard_.device + " 2";
  } else {
    event.who = job.state.person;
    event.role = job.state.role;
  }
  if (event.device.empty()) event.device = job.state.device;
  return handIn(store_, job, std::move(event), now_, edge_);
}

Expected<void> Filler::work(const Task& task) {
  now_ = {.at_ms = task.utc_ms - task.phone_started_utc_ms,
          .boot = fmt::format("demo-{}-{}", task.unit, task.phone_started_utc_ms),
          .utc_ms = task.utc_ms};
  const records::SecretKey& key = keyOf(task.role);
  const NewJob begun{
      .id = fmt::format("demo-{:03}", ++jobs_),
      .unit = task.unit,
      .attachment = task.attachment,
      .procedure_text = std::string(procedures::findInLibrary(task.procedure)->text),
      .variant = task.variant,
      .language = yard_.language,
      .lone_work = task.from_afar ? procedures::LoneWork::PhotoFromAfar : procedures::LoneWork::NotAllowed};
  Expected<OpenJob> job =
      beginJob(store_, begun, {.who = key.id(), .role = task.role, .device = yard_.device}, now_, edge_);
  if (!job) return std::unexpected(std::move(job.error()));
  // Number 1 is the practice unit that the practice loader drives; the scatter follows the job.
  PracticePerson person(1, task.scale, task.wishes, static_cast<std::uint64_t>(jobs_));
  for (int count = 0; count < kMostAnswers && !procedures::hasEnded(job->state.phase); ++count) {
    if (!task.until.empty() && procedures::prompt(job->procedure, job->state).about == task.until) return {};
    if (auto taken = handInAnswer(*job, person, task); !taken) {
      taken.error().place.file = task.unit + " " + task.procedure;
      return taken;
    }
  }
  const Expected<std::string> record = endJob(store_, *job, sealer(task.role), yard_.engine, now_, edge_);
  if (!record) return std::unexpected(record.error());
  now_.utc_ms += 20 * kMinute_ms;
  if (task.countersigned) {
    const auto signed_too = signRecord(store_, *record, sealer("safety-lead"), now_);
    if (!signed_too) return std::unexpected(signed_too.error());
  }
  if (!task.correction.empty()) {
    const auto amended = amendRecord(store_, *record, task.correction, sealer(task.role), now_);
    if (!amended) return std::unexpected(amended.error());
  }
  return {};
}

Expected<bool> isEmpty(const Store& store) {
  const Expected<std::vector<store::Unit>> units = store.units();
  if (!units) return std::unexpected(units.error());
  const Expected<std::vector<std::string>> roots = store.acceptedRoots();
  if (!roots) return std::unexpected(roots.error());
  const Expected<std::vector<std::string>> statements = store.statementNames();
  if (!statements) return std::unexpected(statements.error());
  return units->empty() && roots->empty() && statements->empty();
}

}  // namespace

const std::vector<DemoPerson>& demoPeople() {
  static const std::vector<DemoPerson> people = {{"Tessa Torque (demo)", "technician"},
                                                 {"Otto Oilcan (demo)", "operator"},
                                                 {"Suri Spanner (demo)", "supervisor"},
                                                 {"Lena Lockpin (demo)", "safety-lead"},
                                                 {"Cleo Clipboard (demo)", "yard-clerk"}};
  return people;
}

Expected<void> fillDemoYard(Store& store, const DemoYard& yard, const records::FillBytes& fill,
                            const Edge& edge, const Progress& progress) {
  const Expected<bool> empty = isEmpty(store);
  if (!empty) return std::unexpected(empty.error());
  if (!*empty || yard.keys.size() != demoPeople().size()) {
    return fail(ErrorKind::InvalidInput, "demo-store-not-empty");
  }
  Expected<store::Batch> batch = store.beginBatch();
  if (!batch) return std::unexpected(std::move(batch.error()));
  Filler filler(store, yard, fill, edge);
  if (auto made = filler.makeYardOf(yard.now.utc_ms - kHistory_ms); !made) return made;
  const std::vector<Task> tasks = history(yard.now.utc_ms);
  const int total = static_cast<int>(tasks.size());
  int done = 0;
  for (const Task& task : tasks) {
    if (progress && !progress(done, total)) return fail(ErrorKind::InvalidInput, "demo-cancelled");
    if (auto worked = filler.work(task); !worked) return worked;
    ++done;
  }
  if (auto kept = batch->commit(); !kept) return kept;
  if (progress) progress(total, total);
  return {};
}

}  // namespace hingepin::session
