// SPDX-License-Identifier: GPL-3.0-or-later
#include "confirmer.h"

#include <QStringList>
#include <QVariantList>
#include <utility>

#include "app.h"
#include "engine/session/confirmation.h"
#include "engine/session/people.h"
#include "text.h"

namespace hingepin::mobile {
namespace {

Confirmer* the_confirmer = nullptr;

struct Shown {
  session::Asked asked;
  session::AskedInWords words;
  std::string by;
};

}  // namespace

Confirmer::Confirmer(App& app) : app_(app) {
  the_confirmer = this;
  connect(&app_, &App::stateChanged, this, &Confirmer::clear);
}

Confirmer::~Confirmer() { the_confirmer = nullptr; }

Confirmer* Confirmer::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_confirmer, QJSEngine::CppOwnership);
  return the_confirmer;
}

void Confirmer::clear() {
  code_.clear();
  asked_.clear();
  answer_.clear();
  problem_.clear();
  confirmed_ = false;
  Q_EMIT changed();
}

void Confirmer::read(const QString& code) {
  if (code == code_ && !asked_.isEmpty()) return;
  clear();
  code_ = code;
  app_.backend().ask(
      this,
      [code = plain(code), reader = app_.reader()](Desk& desk) -> Expected<Shown> {
        Expected<session::Asked> asked = session::readAsk(code);
        if (!asked) return std::unexpected(std::move(asked.error()));
        if (!desk.folder) return fail(ErrorKind::NotFound, "key-not-here", {{"name", std::string()}});
        const auto names = session::namesOf(desk.folder->store);
        if (!names) return std::unexpected(names.error());
        Shown shown{.asked = *std::move(asked), .words = {}, .by = {}};
        shown.words = session::sayAsk(desk.folder->store, shown.asked, reader);
        shown.by = session::nameOfKey(*names, shown.asked.by);
        return shown;
      },
      [this](const Expected<Shown>& shown) {
        if (!shown) {
          problem_ = app_.say(shown.error());
          Q_EMIT changed();
          return;
        }
        const session::Asked& asked = shown->asked;
        QStringList roles;
        const QStringList mine = app_.property("roles").toStringList();
        role_.clear();
        for (const std::string& role : asked.roles) {
          roles.append(App::roleName(qt(role)));
          if (mine.contains(qt(role)) && (role_.isEmpty() || qt(role) == app_.role())) role_ = qt(role);
        }
        QVariantList seen;
        for (const auto& [what, said] : shown->words.seen)
          seen.append(QVariantMap{{QStringLiteral("what"), qt(what)}, {QStringLiteral("said"), qt(said)}});
        asked_ = {{QStringLiteral("unit"), qt(asked.unit)},
                  {QStringLiteral("attachment"), qt(asked.attachment)},
                  {QStringLiteral("title"), qt(shown->words.title)},
                  {QStringLiteral("text"), qt(shown->words.text)},
                  {QStringLiteral("by"), qt(shown->by)},
                  {QStringLiteral("time"), static_cast<double>(asked.utc_ms)},
                  {QStringLiteral("roles"), roles},
                  {QStringLiteral("may"), !role_.isEmpty()},
                  {QStringLiteral("seen"), seen}};
        Q_EMIT changed();
      });
}

void Confirmer::give(bool yes) {
  if (asked_.isEmpty() || !answer_.isEmpty()) return;
  app_.backend().ask(
      this,
      [code = plain(code_), yes, key = plain(app_.key()), role = plain(role_),
       now = app_.backend().now()](Desk& desk) -> Expected<std::string> {
        const Expected<session::Sealer> sealer = sealerOf(desk, key, role);
        if (!sealer) return std::unexpected(sealer.error());
        return session::answerAsk(code, yes ? "yes" : "no", *sealer, now);
      },
      [this, yes](const Expected<std::string>& answer) {
        problem_ = answer ? QString() : app_.say(answer.error());
        answer_ = answer ? qt(*answer) : QString();
        confirmed_ = yes;
        Q_EMIT changed();
      });
}

}  // namespace hingepin::mobile
