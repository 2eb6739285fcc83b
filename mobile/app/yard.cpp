// SPDX-License-Identifier: GPL-3.0-or-later
#include "yard.h"

#include <algorithm>
#include <optional>

#include "app.h"
#include "document_rows.h"
#include "engine/formats/calibration_json.h"
#include "engine/formats/job_json.h"
#include "engine/session/compare.h"
#include "engine/session/dispute.h"
#include "engine/session/document.h"
#include "engine/session/due_list.h"
#include "engine/session/job_record.h"
#include "engine/session/moment.h"
#include "engine/session/overview.h"
#include "engine/session/people.h"
#include "engine/session/procedure_words.h"
#include "engine/session/profile.h"
#include "engine/session/stops_view.h"
#include "job_view.h"
#include "text.h"

namespace hingepin::mobile {
namespace {

Yard* the_yard = nullptr;

double timeOf(const std::optional<std::int64_t>& utc_ms) {
  return utc_ms ? static_cast<double>(*utc_ms) : 0.0;
}
QString key(const char* name) { return QString::fromLatin1(name); }

struct Lists {
  QVariantList units, running, checked_out, awaited, confirmed;
  QVariantMap counts;
};

QVariantMap mapOf(const session::RunningJob& job, const std::string& unit, const session::Names& names) {
  return {{key("id"), qt(job.job)},
          {key("unit"), qt(unit)},
          {key("title"), qt(job.title)},
          {key("waitsFor"), qt(job.waits_for)},
          {key("person"), qt(session::nameOfKey(names, job.person))},
          {key("forSecondPerson"), job.for_second_person},
          {key("last"), static_cast<double>(job.last_utc_ms)}};
}

/// What to set for the stops of a pair, a line each; none where too little is on file.
QStringList stopsOf(const store::Store& store, const store::Unit& unit, const session::PairState& pair,
                    const session::Reader& reader) {
  const auto profile = session::readUnitProfile(unit.profile, "unit", folder::edge());
  const auto fitted = store.attachment(pair.attachment);
  if (!profile || !fitted || !*fitted) return {};
  const auto attachment = session::readAttachmentProfile((*fitted)->profile, "attachment", folder::edge());
  if (!attachment) return {};
  const auto unit_block = readJson(profile->block, "unit");
  const auto attachment_block = readJson(attachment->block, "attachment");
  if (!unit_block || !attachment_block) return {};
  const auto machine = formats::readUnit(*unit_block, JsonNode(*unit_block));
  const auto bucket = formats::readAttachment(JsonNode(*attachment_block));
  if (!machine || !bucket) return {};
  session::Entries entries = attachment->entries;
  entries.insert(profile->entries.begin(), profile->entries.end());
  std::optional<calibration::Calibration> calibration;
  if (auto text = session::blobsOf(store)(pair.calibration)) {
    if (auto read = formats::readCalibration(*std::move(text), "stored")) calibration = *std::move(read);
  }
  QStringList lines;
  for (const std::string& line :
       session::sayStopsToSet(*machine, *bucket, entries, calibration ? &*calibration : nullptr, reader))
    lines.append(qt(line));
  return lines;
}

Expected<Lists> listsOf(const store::Store& store, std::int64_t utc_ms, const session::Reader& reader) {
  Lists lists;
  const auto overview = session::unitStates(store, utc_ms, folder::edge(), reader);
  if (!overview) return std::unexpected(overview.error());
  const auto names = session::namesOf(store);
  if (!names) return std::unexpected(names.error());
  for (const session::UnitOverview& unit : overview->units) {
    QVariantList pairs;
    for (const session::PairState& pair : unit.pairs) {
      QStringList restrictions;
      for (const session::Restriction& each : pair.restrictions) {
        const auto words = session::allWords(reader.language);
        const auto found = words ? (*words)->find(each.mark) : session::Words::const_iterator();
        const bool known = words && found != (*words)->end();
        restrictions.append(known ? qt(found->second) : qt(session::say(Message{each.mark, {}}, reader)));
      }
      const auto stored = store.unit(unit.id);
      const QStringList stops = stored && *stored ? stopsOf(store, **stored, pair, reader) : QStringList();
      QStringList why;
      for (const std::string& line : session::sayWhenAgain(pair.when, reader)) why.append(qt(line));
      pairs.append(QVariantMap{{key("attachment"), qt(pair.attachment)},
                               {key("state"), qt(session::nameOf(pair.state))},
                               {key("record"), qt(pair.record)},
                               {key("restrictions"), restrictions},
                               {key("due"), timeOf(pair.due_utc_ms)},
                               {key("why"), why},
                               {key("stops"), stops}});
    }
    for (const session::RunningJob& job : unit.running) lists.running.append(mapOf(job, unit.id, *names));
    lists.units.append(QVariantMap{{key("id"), qt(unit.id)},
                                   {key("state"), qt(session::nameOf(unit.state))},
                                   {key("practice"), unit.practice},
                                   {key("lockedOut"), unit.locked_out},
                                   {key("hasLinkage"), unit.has_linkage},
                                   {key("tagRecord"), unit.tag ? qt(unit.tag->record) : QString()},
                                   {key("due"), timeOf(unit.due_utc_ms)},
                                   {key("pairs"), pairs}});
  }
  lists.counts = {{key("doNotUse"), overview->do_not_use},
                  {key("due"), overview->due + overview->due_soon},
                  {key("waiting"), overview->waiting_for_second_person}};
  const auto out = session::checkOuts(store);
  if (!out) return std::unexpected(out.error());
  for (const session::CheckedOut& each : *out) {
    lists.checked_out.append(QVariantMap{{key("unit"), qt(each.unit)},
                                         {key("record"), qt(each.record)},
                                         {key("time"), static_cast<double>(each.utc_ms)}});
  }
  constexpr std::int64_t kBack_ms = 92LL * 24 * 3600 * 1000;
  const auto confirmations = session::confirmations(store, folder::edge(), reader, utc_ms - kBack_ms);
  if (!confirmations) return std::unexpected(confirmations.error());
  for (const session::AwaitedConfirmation& each : confirmations->awaited) {
    QVariantMap map = mapOf(each.job, each.unit, *names);
    QStringList roles;
    for (const std::string& role : each.roles) roles.append(App::roleName(qt(role)));
    map[key("roles")] = roles;
    lists.awaited.append(map);
  }
  for (const session::Confirmation& each : confirmations->confirmed) {
    QStringList marks;
    if (each.own_phone) marks.append(Yard::tr("on their own phone"));
    for (const std::string& mark : each.marks) marks.append(qt(session::say(Message{mark, {}}, reader)));
    lists.confirmed.append(QVariantMap{{key("unit"), qt(each.unit)},
                                       {key("text"), qt(each.text)},
                                       {key("good"), each.answer == "yes"},
                                       {key("person"), qt(session::nameOfKey(*names, each.key))},
                                       {key("role"), App::roleName(qt(each.role))},
                                       {key("time"), static_cast<double>(each.utc_ms)},
                                       {key("record"), qt(each.record)},
                                       {key("marks"), marks}});
  }
  return lists;
}

QVariant optionalOf(const std::optional<double>& value) { return value ? QVariant(*value) : QVariant(); }

}  // namespace

Yard::Yard(App& app) : app_(app) {
  the_yard = this;
  connect(&app_, &App::storeChanged, this, &Yard::read);
}

Yard::~Yard() { the_yard = nullptr; }

Yard* Yard::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_yard, QJSEngine::CppOwnership);
  return the_yard;
}

void Yard::read() {
  if (app_.state() != App::Open) return;
  app_.backend().ask(
      this,
      [utc_ms = app_.backend().now().utc_ms, reader = app_.reader()](Desk& desk) -> Expected<Lists> {
        if (!desk.folder) return Lists();
        (void)session::keepDue(desk.folder->store,
                               folder::edge());  // where it can't be kept it is worked out
        return listsOf(desk.folder->store, utc_ms, reader);
      },
      [this](const Expected<Lists>& lists) {
        if (!lists) {
          app_.tell(lists.error());
          return;
        }
        units_ = lists->units;
        running_ = lists->running;
        checked_out_ = lists->checked_out;
        awaited_ = lists->awaited;
        confirmed_ = lists->confirmed;
        counts_ = lists->counts;
        Q_EMIT unitsChanged();
      });
}

void Yard::readProcedures(const QString& unit, const QString& attachment) {
  app_.backend().ask(
      this,
      [unit = plain(unit), attachment = plain(attachment), role = plain(app_.role()),
       now = app_.backend().now(), reader = app_.reader()](Desk& desk) {
        return session::proceduresFor(desk.folder->store, unit, attachment, role, now, folder::edge(),
                                      reader);
      },
      [this, reader = app_.reader()](const Expected<std::vector<session::OfferedProcedure>>& offered) {
        if (!offered) {
          app_.tell(offered.error());
          return;
        }
        procedures_.clear();
        for (const session::OfferedProcedure& each : *offered) {
          QVariantList variants;
          for (const session::OfferedVariant& variant : each.variants) {
            if (variant.offered)
              variants.append(QVariantMap{{key("id"), qt(variant.id)}, {key("text"), qt(variant.text)}});
          }
          QVariantList entries;
          for (const session::NeededEntry& entry : each.entries) {
            if (!entry.value.empty()) continue;
            entries.append(
                QVariantMap{{key("id"), qt(entry.id)},
                            {key("unit"), qt(entry.unit)},
                            {key("symbol"), unitSymbol(entry.unit, session::localeOf(reader.language))}});
          }
          QStringList before;
          for (const session::OfferedPrerequisite& needed : each.prerequisites) {
            if (needed.missing || needed.too_old) before.append(qt(needed.title));
          }
          QStringList tools;
          for (const std::string& tool : each.tools) tools.append(qt(tool));
          procedures_.append(QVariantMap{{key("id"), qt(each.id)},
                                         {key("title"), qt(each.title)},
                                         {key("comesFirst"), qt(each.comes_first)},
                                         {key("variants"), variants},
                                         {key("entries"), entries},
                                         {key("tools"), tools},
                                         {key("before"), before}});
        }
        Q_EMIT proceduresChanged();
      });
}

void Yard::readRecords(const QString& unit) {
  app_.backend().ask(
      this,
      [unit = plain(unit), reader = app_.reader()](Desk& desk) {
        return session::recordsOf(desk.folder->store, unit, reader);
      },
      [this](const Expected<std::vector<session::RecordLine>>& lines) {
        if (!lines) {
          app_.tell(lines.error());
          return;
        }
        records_.clear();
        for (const session::RecordLine& line : *lines) {
          QStringList findings;
          for (const Message& finding : line.findings) findings.append(app_.say(finding));
          records_.append(QVariantMap{{key("record"), qt(line.name)},
                                      {key("title"), qt(line.title)},
                                      {key("phase"), qt(line.phase)},
                                      {key("time"), static_cast<double>(line.utc_ms)},
                                      {key("procedure"), qt(line.procedure)},
                                      {key("amends"), qt(line.amends)},
                                      {key("corrected"), !line.amended_by.empty()},
                                      {key("trusted"), line.standing == records::Standing::Trusted},
                                      {key("findings"), findings}});
        }
        Q_EMIT recordsChanged();
      });
}

void Yard::readHistory(const QString& unit, const QString& attachment) {
  app_.backend().ask(
      this,
      [unit = plain(unit), attachment = plain(attachment)](Desk& desk) {
        return session::historyOf(desk.folder->store, unit, attachment);
      },
      [this](const Expected<std::vector<session::HistoryPoint>>& points) {
        history_.clear();
        if (points) {
          for (const session::HistoryPoint& point : *points) {
            const auto mass = [&](const std::optional<double>& value_kg) {
              return value_kg ? QVariant(inSystem(Amount{*value_kg, "kg", 0}, app_.system()).value)
                              : QVariant();
            };
            history_.append(
                QVariantMap{{key("time"), static_cast<double>(point.utc_ms)},
                            {key("zero"), mass(point.zero_found_kg ? point.zero_found_kg : point.zero_kg)},
                            {key("zeroLow"), mass(point.zero_low_kg)},
                            {key("zeroHigh"), mass(point.zero_high_kg)},
                            {key("span"), optionalOf(point.span)},
                            {key("error"), optionalOf(point.error_percent)},
                            {key("limit"), optionalOf(point.error_limit_percent)},
                            {key("verdict"), qt(point.verdict)},
                            {key("calibration"), point.calibration}});
          }
        }
        Q_EMIT historyChanged();
      });
}

void Yard::readDocument(const QString& record) {
  document_.clear();
  Q_EMIT documentChanged();
  app_.backend().ask(
      this,
      [record = plain(record), reader = app_.reader()](Desk& desk) {
        return session::documentOf(desk.folder->store, record, reader);
      },
      [this](const Expected<session::Document>& document) {
        if (!document) {
          app_.tell(document.error());
          return;
        }
        QVariantList sections;
        for (const session::DocumentSection& section : document->sections) {
          sections.append(
              QVariantMap{{key("title"), qt(section.title)}, {key("rows"), rowsOf(section.rows)}});
        }
        QStringList stamps;
        for (const std::string& stamp : document->stamps) stamps.append(qt(stamp));
        document_ = QVariantMap{{key("record"), qt(document->record)},
                                {key("title"), qt(document->title)},
                                {key("stamps"), stamps},
                                {key("verdict"), qt(document->verdict)},
                                {key("sections"), sections},
                                {key("notForTrade"), qt(document->not_for_trade)}};
        Q_EMIT documentChanged();
      });
}

void Yard::compare(const QString& before, const QString& after) {
  app_.backend().ask(
      this,
      [before = plain(before), after = plain(after),
       reader = app_.reader()](Desk& desk) -> Expected<QVariantList> {
        const auto differences = session::differencesFor(desk.folder->store, before, after, reader);
        if (!differences) return std::unexpected(differences.error());
        QVariantList list;
        for (const std::string& each : *differences) list.append(qt(each));
        return list;
      },
      [this](const Expected<QVariantList>& list) {
        if (!list) {
          app_.tell(list.error());
          return;
        }
        differences_ = *list;
        Q_EMIT differencesChanged();
      });
}

void Yard::write(const std::function<Expected<std::string>(Desk&, const session::Sealer&)>& statement,
                 const std::function<void()>& then) {
  app_.backend().ask(
      this,
      [statement, id = plain(app_.key()), role = plain(app_.role())](Desk& desk) -> Expected<std::string> {
        const Expected<session::Sealer> sealer = sealerOf(desk, id, role);
        if (!sealer) return std::unexpected(sealer.error());
        return statement(desk, *sealer);
      },
      [this, then](const Expected<std::string>& made) {
        if (!made) {
          app_.tell(made.error());
          return;
        }
        Q_EMIT app_.storeChanged();
        then();
      });
}

void Yard::sign(const QString& record) {
  write(
      [name = plain(record), now = app_.backend().now()](Desk& desk, const session::Sealer& sealer) {
        return session::signRecord(desk.folder->store, name, sealer, now);
      },
      [this, record] { readDocument(record); });
}

void Yard::amend(const QString& record, const QString& correction) {
  write(
      [name = plain(record), text = plain(correction), now = app_.backend().now()](
          Desk& desk, const session::Sealer& sealer) {
        return session::amendRecord(desk.folder->store, name, text, sealer, now);
      },
      [this, record] { readDocument(record); });
}

QVariantList Yard::events() const {
  QVariantList list;
  for (const auto& [name, event] : proof::kEventNames) {
    // These two are told by the records themselves.
    if (event == proof::Event::Taught || event == proof::Event::ShiftProofFailed) continue;
    list.append(
        QVariantMap{{key("value"), qt(std::string(name))},
                    {key("text"), qt(session::say({"due-event-" + std::string(name), {}}, app_.reader()))}});
  }
  return list;
}

void Yard::noteEvent(const QString& unit, const QString& attachment, const QString& event,
                     const QString& note) {
  const auto row = std::ranges::find(proof::kEventNames, plain(event), &Named<proof::Event>::name);
  if (row == proof::kEventNames.end()) return;
  write(
      [unit = plain(unit), attachment = plain(attachment), happened = row->value,
       note = plain(note.trimmed()), now = app_.backend().now()](Desk& desk, const session::Sealer& sealer) {
        return session::recordEvent(desk.folder->store, unit, attachment, happened, note, sealer, now);
      },
      [this, unit] { readRecords(unit); });
}

void Yard::readDispute(const QString& unit, const QString& attachment, const QString& day) {
  const std::optional<std::int64_t> moment = session::readUtc(plain(day.trimmed()) + "T23:59:59Z");
  if (!moment) {
    dispute_.clear();
    Q_EMIT disputeChanged();
    return;
  }
  const session::Reader reader = app_.reader();
  app_.backend().ask(
      this,
      [unit = plain(unit), attachment = plain(attachment), utc_ms = *moment,
       reader](Desk& desk) -> Expected<QStringList> {
        const auto dispute = session::disputeOf(desk.folder->store, unit, attachment, utc_ms);
        if (!dispute) return std::unexpected(dispute.error());
        QStringList lines;
        for (const std::string& line : session::sayDispute(*dispute, reader)) lines.append(qt(line));
        return lines;
      },
      [this](const Expected<QStringList>& lines) {
        if (!lines) {
          app_.tell(lines.error());
          return;
        }
        dispute_ = *lines;
        Q_EMIT disputeChanged();
      });
}

}  // namespace hingepin::mobile
