// SPDX-License-Identifier: GPL-3.0-or-later
#include "yard.h"

#include <algorithm>

#include "app.h"
#include "engine/procedures/library.h"
#include "engine/procedures/procedure.h"
#include "engine/session/job.h"
#include "engine/session/procedure_words.h"
#include "engine/session/profile.h"
#include "engine/units/ucum.h"
#include "job_view.h"
#include "text.h"

namespace hingepin::mobile {
namespace {

Yard* the_yard = nullptr;

constexpr std::int64_t kSoon_ms = 7LL * 24 * 3600 * 1000;

struct Lists {
  QVariantList units;
  QVariantList running;
};

QString titleOf(const std::string& procedure, const std::string& language) {
  const procedures::LibraryEntry* const entry = procedures::findInLibrary(procedure);
  const auto words = session::allWords(language);
  if (entry == nullptr || !words) return qt(procedure);
  const auto read = procedures::readProcedure(std::string(entry->text), procedure);
  if (!read) return qt(procedure);
  const auto title = (*words)->find(read->title);
  return title == (*words)->end() ? qt(procedure) : qt(title->second);
}

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
      [language = plain(app_.language()), utc_ms = app_.backend().now().utc_ms](Desk& desk) -> Expected<Lists> {
        Lists lists;
        if (!desk.folder) return lists;
        const store::Store& store = desk.folder->store;
        const auto units = store.units();
        if (!units) return std::unexpected(units.error());
        const auto running = store.jobsRunning();
        if (!running) return std::unexpected(running.error());
        for (const store::Job& job : *running) {
          lists.running.append(QVariantMap{{QStringLiteral("id"), qt(job.id)},
                                           {QStringLiteral("unit"), qt(job.unit)},
                                           {QStringLiteral("title"), titleOf(job.procedure_id, language)}});
        }
        for (const store::Unit& unit : *units) {
          const auto pairs = store.pairsOf(unit.id);
          if (!pairs) return std::unexpected(pairs.error());
          QVariantList fitted;
          QString state = QStringLiteral("not-calibrated");
          for (const store::Pair& pair : *pairs) {
            const bool due = pair.due_utc_ms && *pair.due_utc_ms <= utc_ms;
            const bool soon = pair.due_utc_ms && *pair.due_utc_ms <= utc_ms + kSoon_ms;
            const QString one = !pair.restrictions.empty() ? QStringLiteral("restricted")
                                : due                      ? QStringLiteral("due")
                                : soon                     ? QStringLiteral("due-soon")
                                : pair.record.empty()      ? QStringLiteral("not-calibrated")
                                                           : QStringLiteral("ready");
            state = one;
            fitted.append(QVariantMap{{QStringLiteral("attachment"), qt(pair.attachment)},
                                      {QStringLiteral("state"), one},
                                      {QStringLiteral("record"), qt(pair.record)},
                                      {QStringLiteral("due"), pair.due_utc_ms ? static_cast<double>(*pair.due_utc_ms) : 0.0}});
          }
          lists.units.append(QVariantMap{{QStringLiteral("id"), qt(unit.id)}, {QStringLiteral("state"), state}, {QStringLiteral("pairs"), fitted}});
        }
        return lists;
      },
      [this](const Expected<Lists>& lists) {
        if (!lists) {
          app_.tell(lists.error());
          return;
        }
        units_ = lists->units;
        running_ = lists->running;
        Q_EMIT unitsChanged();
      });
}

void Yard::readProcedures(const QString& unit) {
  app_.backend().ask(
      this,
      [unit = plain(unit), role = plain(app_.role()), language = plain(app_.language()), system = app_.system()](Desk& desk) {
        QVariantList list;
        const auto stored = desk.folder->store.unit(unit);
        if (!stored || !*stored) return list;
        const auto profile = session::readUnitProfile((*stored)->profile, unit, folder::edge());
        const auto words = session::allWords(language);
        if (!words) return list;
        const auto say = [&](const std::string& code) {
          const auto found = (*words)->find(code);
          return found == (*words)->end() ? qt(code) : qt(found->second);
        };
        for (const procedures::LibraryEntry& entry : procedures::library()) {
          const auto procedure = procedures::readProcedure(std::string(entry.text), std::string(entry.id));
          if (!procedure) continue;
          if (std::ranges::find(procedure->run_roles, role) == procedure->run_roles.end()) continue;
          QVariantList variants;
          for (const procedures::Variant& variant : procedure->variants) {
            const bool offered = !profile || profile->teaching.empty() ||
                                 std::ranges::find(profile->teaching, variant.id) != profile->teaching.end();
            const bool teaches = std::ranges::any_of(std::array{"own-routine", "typed-readings", "logged"},
                                                     [&](const char* way) { return variant.id == way; });
            if (teaches && !offered) continue;
            variants.append(QVariantMap{{QStringLiteral("id"), qt(variant.id)}, {QStringLiteral("text"), say(variant.text)}});
          }
          QVariantList entries;
          const session::Entries given = profile ? session::entriesFor(*procedure, *profile, nullptr, {}) : session::Entries();
          for (const procedures::Entry& each : procedure->entries) {
            if (!each.standard.empty() || given.contains(each.id)) continue;
            entries.append(QVariantMap{{QStringLiteral("id"), qt(each.id)},
                                       {QStringLiteral("unit"), qt(each.unit)},
                                       {QStringLiteral("symbol"), unitSymbol(each.unit)}});
          }
          QStringList before;
          for (const procedures::Prerequisite& needed : procedure->prerequisites) before.append(titleOf(needed.procedure, language));
          QStringList tools;
          for (const std::string& tool : procedure->tools) tools.append(say(tool));
          list.append(QVariantMap{{QStringLiteral("id"), qt(procedure->id)},
                                  {QStringLiteral("title"), say(procedure->title)},
                                  {QStringLiteral("comesFirst"), say(procedure->comes_first)},
                                  {QStringLiteral("variants"), variants},
                                  {QStringLiteral("entries"), entries},
                                  {QStringLiteral("tools"), tools},
                                  {QStringLiteral("before"), before}});
        }
        return list;
      },
      [this](const QVariantList& list) {
        procedures_ = list;
        Q_EMIT proceduresChanged();
      });
}

void Yard::readRecords(const QString& unit) {
  app_.backend().ask(
      this,
      [unit = plain(unit), language = plain(app_.language())](Desk& desk) {
        QVariantList list;
        const auto jobs = desk.folder->store.jobs(unit);
        if (!jobs) return list;
        for (const store::Job& job : *jobs) {
          if (job.record.empty()) continue;
          list.append(QVariantMap{{QStringLiteral("record"), qt(job.record)},
                                  {QStringLiteral("title"), titleOf(job.procedure_id, language)},
                                  {QStringLiteral("phase"), qt(job.phase)},
                                  {QStringLiteral("begun"), static_cast<double>(job.begun_utc_ms)}});
        }
        return list;
      },
      [this](const QVariantList& list) {
        records_ = list;
        Q_EMIT recordsChanged();
      });
}

}  // namespace hingepin::mobile
