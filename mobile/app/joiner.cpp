// SPDX-License-Identifier: GPL-3.0-or-later
#include "joiner.h"

#include <utility>

#include "app.h"
#include "engine/session/join.h"
#include "text.h"

namespace hingepin::mobile {
namespace {

Joiner* the_joiner = nullptr;

/// In the settings: a code is answered also after the app was started again.
constexpr const char* kAsked = "join";

}  // namespace

Joiner::Joiner(App& app) : app_(app) {
  the_joiner = this;
  connect(&app_, &App::stateChanged, this, &Joiner::enterState);
}

Joiner::~Joiner() { the_joiner = nullptr; }

Joiner* Joiner::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_joiner, QJSEngine::CppOwnership);
  return the_joiner;
}

QString Joiner::key() const {
  constexpr int kShown = 12;
  const QVariantList people = app_.property("people").toList();
  return people.isEmpty() ? QString()
                          : people.first().toMap().value(QStringLiteral("id")).toString().left(kShown);
}

void Joiner::say(const QString& problem) {
  problem_ = problem;
  Q_EMIT changed();
}

void Joiner::clear() {
  read_.clear();
  asking_.clear();
  admission_.clear();
  has_lists_ = false;
  say({});
}

void Joiner::enterState() {
  if (app_.state() == App::Joining) {
    code_ = app_.settings().value(QLatin1String(kAsked)).toString();
    // Only the key that is here now can be let in.
    const auto asked = session::readJoin(plain(code_));
    if (!asked || qt(session::shortKey(asked->key)) != key()) code_.clear();
    if (code_.isEmpty()) makeCode({});
  } else {
    code_.clear();
    if (app_.state() != App::Starting) app_.settings().remove(QLatin1String(kAsked));
  }
  clear();
}

void Joiner::makeCode(const QString& passphrase) {
  const QVariantMap person = app_.property("people").toList().value(0).toMap();
  app_.backend().ask(
      this,
      [id = plain(person.value(QStringLiteral("id")).toString()),
       key_name = plain(person.value(QStringLiteral("key")).toString()),
       name = plain(person.value(QStringLiteral("name")).toString()), pass = plain(passphrase),
       now = app_.backend().now()](Desk& desk) -> Expected<std::string> {
        if (!desk.keys.contains(id)) {
          if (pass.empty()) return std::string();
          Expected<records::SecretKey> own = folder::openSealingKey(*desk.folder, key_name, pass);
          if (!own) return std::unexpected(own.error());
          desk.keys.emplace(id, *std::move(own));
        }
        return session::askToJoin(desk.keys.at(id), name, desk.folder->installation, now, folder::fillBytes);
      },
      [this](const Expected<std::string>& code) {
        if (!code) {
          say(app_.say(code.error()));
          return;
        }
        // None yet: the page asks for the passphrase.
        if (code->empty()) return;
        code_ = qt(*code);
        app_.settings().setValue(QLatin1String(kAsked), code_);
        Q_EMIT codeMade();
        say({});
      });
}

void Joiner::take(const QString& code) {
  if (is_taking_) return;
  is_taking_ = true;
  app_.backend().ask(
      this,
      [ask = plain(code_), code = plain(code), now = app_.backend().now()](Desk& desk) {
        return session::takeAdmission(desk.folder->store, ask, code, now, folder::fillBytes);
      },
      [this](const Expected<session::Admission>& admission) {
        is_taking_ = false;
        if (!admission) {
          say(app_.say(admission.error()));
          return;
        }
        if (admission->lists.empty()) {
          app_.tell(
              tr("You are let in. The yard's lists did not fit in the code: they come with the next "
                 "exchange, or as a file. Until then you can't sign on this phone."));
        }
        app_.joined();
      });
}

void Joiner::read(const QString& code) {
  if (code == read_ && !asking_.isEmpty()) return;
  clear();
  const Expected<session::Joining> joining = session::readJoin(plain(code));
  if (!joining) {
    say(app_.say(joining.error()));
    return;
  }
  read_ = code;
  asking_ = {{QStringLiteral("name"), qt(joining->name)},
             {QStringLiteral("key"), qt(session::shortKey(joining->key))},
             {QStringLiteral("time"), static_cast<double>(joining->utc_ms)}};
  Q_EMIT changed();
}

void Joiner::letIn(const QString& role, const QString& yard_passphrase) {
  if (asking_.isEmpty() || !admission_.isEmpty()) return;
  app_.backend().ask(
      this,
      [code = plain(read_), role = plain(role), pass = plain(yard_passphrase),
       now = app_.backend().now()](Desk& desk) -> Expected<session::LetIn> {
        const Expected<records::SecretKey> yard_key = folder::openKey(*desk.folder, kYardKey, pass);
        if (!yard_key) return std::unexpected(yard_key.error());
        return session::letIn(desk.folder->store, *yard_key, code, role, now, folder::fillBytes);
      },
      [this](const Expected<session::LetIn>& let_in) {
        if (let_in) {
          admission_ = qt(let_in->code);
          has_lists_ = let_in->has_lists;
          app_.readPeople();
          say({});
        } else if (let_in.error().message.code == "key-not-here") {
          say(tr(
              "The yard's key is not on this phone. Let people in on the phone on which the yard was made."));
        } else {
          say(app_.say(let_in.error()));
        }
      });
}

}  // namespace hingepin::mobile
