// SPDX-License-Identifier: GPL-3.0-or-later
#include "app.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QDir>
#include <QGuiApplication>
#include <QLocale>
#include <QQmlEngine>
#include <QRegularExpression>
#include <algorithm>
#include <optional>
#include <tuple>
#include <utility>

#include "engine/records/keys.h"
#include "engine/session/demo_yard.h"
#include "engine/session/people.h"
#include "engine/session/procedure_words.h"
#include "engine/session/yard.h"
#include "text.h"

namespace hingepin::mobile {
namespace {

App* the_app = nullptr;

/// Guards nothing: everything that it opens is invented.
constexpr const char* kDemoPassphrase = "practice yard, all invented";

struct KeyFile {
  std::string name;  ///< of the file; "" where the key is on another phone
  std::string id;
  std::vector<std::string> roles;
  std::string shown;  ///< the name that the store keeps for it
};

/// The keys of a folder with the roles that the yard gives them now, then those that may sign on phones of
/// their own; the yard's own key is no person's.
Expected<std::vector<KeyFile>> peopleOf(const folder::Folder& folder, std::int64_t utc_ms) {
  const auto keys = folder::keysOf(folder);
  if (!keys) return std::unexpected(keys.error());
  const auto signers = session::signersOf(folder.store);
  const auto names = session::namesOf(folder.store);
  std::vector<KeyFile> people;
  const auto add = [&](const std::string& file, const records::PublicKey& key) -> KeyFile& {
    people.push_back({.name = file, .id = records::thumbprint(key), .roles = {}, .shown = {}});
    if (names && names->contains(people.back().id)) people.back().shown = names->at(people.back().id);
    return people.back();
  };
  for (const folder::NamedKey& key : *keys) {
    if (key.name != kYardKey) add(key.name, key.key);
  }
  if (!signers || !signers->list) return people;
  for (const records::Signer& signer : signers->list->signers) {
    const std::string id = records::thumbprint(signer.key);
    const bool is_revoked = std::ranges::find(signers->list->revocations, id, &records::Revocation::key) !=
                            signers->list->revocations.end();
    if (is_revoked || utc_ms < signer.valid_from_utc_ms ||
        (signer.valid_until_utc_ms && utc_ms >= *signer.valid_until_utc_ms)) {
      continue;
    }
    const auto known = std::ranges::find(people, id, &KeyFile::id);
    KeyFile& person = known == people.end() ? add("", signer.key) : *known;
    person.roles.push_back(signer.role);
  }
  return people;
}

/// A label that a key file can have, from what somebody calls themself.
std::string labelFrom(const QString& name, const std::vector<folder::NamedKey>& taken) {
  QString label;
  for (const QChar c : name.normalized(QString::NormalizationForm_D).toLower()) {
    if ((c >= QLatin1Char('a') && c <= QLatin1Char('z')) ||
        (c >= QLatin1Char('0') && c <= QLatin1Char('9'))) {
      label += c;
    } else if (!label.isEmpty() && !label.endsWith(QLatin1Char('-')) && c.isSpace()) {
      label += QLatin1Char('-');
    }
  }
  while (label.endsWith(QLatin1Char('-'))) label.chop(1);
  label.truncate(24);
  if (label.isEmpty() || !label.front().isLetter()) label.prepend(QStringLiteral("key"));
  std::string free = plain(label);
  const auto isTaken = [&](const std::string& text) {
    return text == kYardKey || std::ranges::any_of(taken, [&](const auto& key) { return key.name == text; });
  };
  for (int number = 2; isTaken(free); ++number) free = plain(label) + "-" + std::to_string(number);
  return free;
}

std::vector<records::Signer> signersFor(const records::PublicKey& key, const QStringList& roles,
                                        std::int64_t utc_ms) {
  std::vector<records::Signer> signers;
  for (const QString& role : roles) {
    signers.push_back(
        {.key = key, .role = plain(role), .valid_from_utc_ms = utc_ms, .valid_until_utc_ms = {}});
  }
  return signers;
}

/// Those whose key is on this phone, and the others.
std::pair<QVariantList, QVariantList> listed(const std::vector<KeyFile>& people) {
  QVariantList here;
  QVariantList elsewhere;
  for (const KeyFile& person : people) {
    QStringList roles;
    for (const std::string& role : person.roles) roles.append(qt(role));
    const QString id = qt(person.id);
    const QString otherwise = person.name.empty() ? id.left(8) : qt(person.name);
    (person.name.empty() ? elsewhere : here)
        .append(QVariantMap{{QStringLiteral("key"), qt(person.name)},
                            {QStringLiteral("id"), id},
                            {QStringLiteral("name"), person.shown.empty() ? otherwise : qt(person.shown)},
                            {QStringLiteral("roles"), roles}});
  }
  return {here, elsewhere};
}

}  // namespace

App::App(Start start)
    : start_(std::move(start)),
      settings_(QDir(start_.folder).filePath(QStringLiteral("settings.ini")), QSettings::IniFormat),
      backend_(start_.clock) {
  the_app = this;
  connect(&backend_, &Backend::busyChanged, this, &App::busyChanged);
  if (start_.diagnostics != nullptr) {
    connect(qGuiApp, &QGuiApplication::applicationStateChanged, this, [this](Qt::ApplicationState state) {
      start_.diagnostics->setResting(state == Qt::ApplicationSuspended);
    });
  }
  us_units_ = settings_
                  .value(QStringLiteral("us_units"),
                         QLocale::system().measurementSystem() == QLocale::ImperialUSSystem)
                  .toBool();
  look_ = static_cast<Look>(std::clamp(settings_.value(QStringLiteral("look"), Day).toInt(), 0, 2));
  text_scale_ = std::clamp(settings_.value(QStringLiteral("text_scale"), 1.0).toDouble(), 1.0, 2.0);
  gloves_ = settings_.value(QStringLiteral("gloves"), false).toBool();
  wet_ = settings_.value(QStringLiteral("wet"), false).toBool();
  sounds_ = settings_.value(QStringLiteral("sounds"), true).toBool();
  speaks_ = settings_.value(QStringLiteral("speaks"), true).toBool();
  language_ = settings_.value(QStringLiteral("language")).toString();
  if (!languages().contains(language_)) {
    language_ = QStringLiteral("en");
    const QString system = QLocale::system().bcp47Name();
    for (const QString& tag : languages()) {
      if (system == tag || system.section(QLatin1Char('-'), 0, 0) == tag.section(QLatin1Char('-'), 0, 0))
        language_ = tag;
    }
  }
  speakLanguage();
}

App::~App() { the_app = nullptr; }

App* App::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_app, QJSEngine::CppOwnership);
  return the_app;
}

App* App::instance() { return the_app; }

QString App::version() { return QStringLiteral(HINGEPIN_VERSION); }

QString App::demoPassphrase() { return QString::fromLatin1(kDemoPassphrase); }

QStringList App::languages() const {
  QStringList tags;
  for (const std::string& tag : session::languages()) tags.append(qt(tag));
  return tags;
}

QString App::decimalMark() const { return qt(session::localeOf(plain(language_)).decimal_mark); }

bool App::rightToLeft() const { return session::localeOf(plain(language_)).right_to_left; }

const session::Catalogue& App::catalogue() const { return session::engineCatalogue(plain(language_)); }

session::Reader App::reader() const {
  const int offset_min = QDateTime::currentDateTime().offsetFromUtc() / 60;
  return {.language = plain(language_), .system = system(), .utc_offset_min = offset_min};
}

QString App::say(const Message& message) const { return qt(session::say(message, reader())); }

QString App::say(const Error& error) const { return say(error.message); }

void App::tell(const Error& error) {
  if (start_.diagnostics != nullptr) start_.diagnostics->note(folder::LogLevel::Warning, "app", error);
  tell(say(error));
}

void App::tell(const QString& words) {
  problem_ = words;
  Q_EMIT problemChanged();
}

void App::clearProblem() {
  if (problem_.isEmpty()) return;
  problem_.clear();
  Q_EMIT problemChanged();
}

QString Translator::translate(const char* context, const char* source, const char* comment, int count) const {
  QString text = QTranslator::translate(context, source, comment, count);
  if (!right_to_left || !text.contains(QLatin1Char('%'))) return text;
  // Values that stand together, with the degree or per cent sign after them, are one.
  static const QRegularExpression values(QStringLiteral("(%[1-9](?:(?: ±)? %[1-9])*(?:°| ?%(?![1-9n]))?)"));
  return text.replace(values, QStringLiteral("\u2068\\1\u2069"));
}

void App::speakLanguage() {
  QCoreApplication::removeTranslator(&translator_);
  translator_.right_to_left = rightToLeft();
  if (translator_.load(QStringLiteral(":/i18n/hingepin_%1.qm")
                           .arg(QString(language_).replace(QLatin1Char('-'), QLatin1Char('_'))))) {
    QCoreApplication::installTranslator(&translator_);
  }
}

void App::setLanguage(const QString& language) {
  if (language == language_ || !languages().contains(language)) return;
  language_ = language;
  settings_.setValue(QStringLiteral("language"), language);
  speakLanguage();
  Q_EMIT languageChanged();
  Q_EMIT storeChanged();
  if (QQmlEngine* const engine = qmlEngine(this)) engine->retranslate();
}

template <class Value>
bool put(QSettings& settings, const char* key, Value& held, const Value& value) {
  if (held == value) return false;
  held = value;
  settings.setValue(QLatin1String(key), value);
  return true;
}

void App::setLook(Look look) {
  if (look_ == look) return;
  look_ = look;
  settings_.setValue(QStringLiteral("look"), static_cast<int>(look));
  Q_EMIT settingsChanged();
}
void App::setUsUnits(bool on) {
  if (!put(settings_, "us_units", us_units_, on)) return;
  Q_EMIT settingsChanged();
  Q_EMIT storeChanged();
}
void App::setTextScale(double scale) {
  if (put(settings_, "text_scale", text_scale_, std::clamp(scale, 1.0, 2.0))) Q_EMIT settingsChanged();
}
void App::setGloves(bool on) {
  if (put(settings_, "gloves", gloves_, on)) Q_EMIT settingsChanged();
}
void App::setWet(bool on) {
  if (put(settings_, "wet", wet_, on)) Q_EMIT settingsChanged();
}
void App::setSounds(bool on) {
  if (put(settings_, "sounds", sounds_, on)) Q_EMIT settingsChanged();
}
void App::setSpeaks(bool on) {
  if (put(settings_, "speaks", speaks_, on)) Q_EMIT settingsChanged();
}

void App::setState(State state) {
  state_ = state;
  if (start_.diagnostics != nullptr) {
    start_.diagnostics->note(folder::LogLevel::Information, "app",
                             plain(QStringLiteral("state-") + QVariant::fromValue(state).toString()));
  }
  Q_EMIT stateChanged();
}

void App::begin() {
  const auto* const interrupted =
      start_.diagnostics == nullptr ? nullptr : &start_.diagnostics->interrupted();
  if (interrupted != nullptr && *interrupted && (*interrupted)->signal) {
    tell(
        tr("Last time the app ended in a fault of its own. What was answered is kept: a job opens where "
           "it was. Under Settings you can save the log for whoever looks into it."));
  }
  const QString last = settings_.value(QStringLiteral("open")).toString();
  if (last.isEmpty()) {
    setState(FirstStart);
  } else {
    openYard(last == QLatin1String("demo"));
  }
}

void App::openYard(bool demo) {
  demo_ = demo;
  const std::string path =
      plain(QDir(start_.folder).filePath(demo ? QStringLiteral("demo") : QStringLiteral("yard")));
  settings_.setValue(QStringLiteral("open"), demo ? QStringLiteral("demo") : QStringLiteral("yard"));
  struct Opened {
    std::vector<KeyFile> people;
    bool has_yard;
  };
  backend_.ask(
      this,
      [path, utc_ms = backend_.now().utc_ms](Desk& desk) -> Expected<Opened> {
        desk.keys.clear();
        desk.folder.reset();
        Expected<folder::Folder> opened = folder::openFolder(path);
        if (!opened) return std::unexpected(opened.error());
        desk.folder.emplace(*std::move(opened));
        Expected<std::vector<KeyFile>> people = peopleOf(*desk.folder, utc_ms);
        if (!people) return std::unexpected(people.error());
        const auto roots = desk.folder->store.acceptedRoots();
        if (!roots) return std::unexpected(roots.error());
        return Opened{*std::move(people), !roots->empty()};
      },
      [this](const Expected<Opened>& opened) {
        if (!opened) {
          tell(opened.error());
          setState(Broken);
          return;
        }
        std::tie(people_, people_elsewhere_) = listed(opened->people);
        Q_EMIT peopleChanged();
        if (opened->has_yard) {
          setState(people_.isEmpty() ? KeysLost : Locked);
        } else {
          // A key whose yard is on another phone, or whose own was not made to the end.
          setState(people_.isEmpty() ? FirstStart : Joining);
        }
      });
}

void App::makeYard(const QString& name, const QStringList& roles, const QString& passphrase, bool anew) {
  clearProblem();
  demo_ = false;
  const std::string path = plain(QDir(start_.folder).filePath(QStringLiteral("yard")));
  struct Made {
    std::string name;
    std::string id;
  };
  backend_.ask(
      this,
      [path, name, roles, anew, pass = plain(passphrase),
       utc_ms = backend_.now().utc_ms](Desk& desk) -> Expected<Made> {
        desk.keys.clear();
        desk.folder.reset();
        Expected<folder::Folder> opened = folder::openFolder(path);
        if (!opened) return std::unexpected(opened.error());
        desk.folder.emplace(*std::move(opened));
        const auto there = folder::keysOf(*desk.folder);
        if (!there) return std::unexpected(there.error());
        // Over a yard that is there no new keys are left behind unasked.
        const auto roots = desk.folder->store.acceptedRoots();
        if (!roots) return std::unexpected(roots.error());
        if (!roots->empty() && !(anew && there->empty()))
          return fail(ErrorKind::InvalidInput, "yard-already-made", {{"list", roots->back()}});
        // The person's key comes first: it names the installation.
        const Expected<folder::NamedKey> person =
            folder::makeKey(*desk.folder, labelFrom(name, *there), pass);
        if (!person) return std::unexpected(person.error());
        const Expected<folder::NamedKey> yard = folder::makeKey(*desk.folder, kYardKey, pass);
        if (!yard) return std::unexpected(yard.error());
        const Expected<records::SecretKey> yard_key = folder::openKey(*desk.folder, kYardKey, pass);
        if (!yard_key) return std::unexpected(yard_key.error());
        const std::vector<records::Signer> signers = signersFor(person->key, roles, utc_ms);
        const auto made = roots->empty() ? session::makeYard(desk.folder->store, *yard_key, signers, utc_ms)
                                         : session::renewYard(desk.folder->store, *yard_key, signers, utc_ms);
        if (!made) return std::unexpected(made.error());
        const auto named = session::keepName(desk.folder->store, records::thumbprint(person->key),
                                             plain(name.trimmed()), folder::fillBytes, utc_ms);
        if (!named) return std::unexpected(named.error());
        Expected<records::SecretKey> own = folder::openSealingKey(*desk.folder, person->name, pass);
        if (!own) return std::unexpected(own.error());
        const std::string id = own->id();
        desk.keys.emplace(id, *std::move(own));
        return Made{person->name, id};
      },
      [this, name, roles](const Expected<Made>& made) {
        if (!made && made.error().message.code == "yard-already-made") {
          // Either there are keys to open it with, or the screen says that they are lost.
          openYard(false);
          return;
        }
        if (!made) {
          tell(made.error());
          return;
        }
        settings_.setValue(QStringLiteral("open"), QStringLiteral("yard"));
        enter(name.trimmed(), qt(made->id), roles);
        readPeople();
      });
}

void App::beginJoining(const QString& name, const QString& passphrase) {
  clearProblem();
  demo_ = false;
  const std::string path = plain(QDir(start_.folder).filePath(QStringLiteral("yard")));
  backend_.ask(
      this,
      [path, name, pass = plain(passphrase),
       utc_ms = backend_.now().utc_ms](Desk& desk) -> Expected<std::vector<KeyFile>> {
        desk.keys.clear();
        desk.folder.reset();
        Expected<folder::Folder> opened = folder::openFolder(path);
        if (!opened) return std::unexpected(opened.error());
        desk.folder.emplace(*std::move(opened));
        const auto there = folder::keysOf(*desk.folder);
        if (!there) return std::unexpected(there.error());
        const auto roots = desk.folder->store.acceptedRoots();
        if (!roots) return std::unexpected(roots.error());
        if (!roots->empty() || !there->empty())
          return fail(ErrorKind::InvalidInput, "join-already",
                      {{"list", roots->empty() ? "" : roots->back()}});
        const Expected<folder::NamedKey> person =
            folder::makeKey(*desk.folder, labelFrom(name, *there), pass);
        if (!person) return std::unexpected(person.error());
        const auto named = session::keepName(desk.folder->store, records::thumbprint(person->key),
                                             plain(name.trimmed()), folder::fillBytes, utc_ms);
        if (!named) return std::unexpected(named.error());
        Expected<records::SecretKey> own = folder::openSealingKey(*desk.folder, person->name, pass);
        if (!own) return std::unexpected(own.error());
        const std::string id = own->id();
        desk.keys.emplace(id, *std::move(own));
        return peopleOf(*desk.folder, utc_ms);
      },
      [this](const Expected<std::vector<KeyFile>>& people) {
        if (!people && people.error().message.code == "join-already") {
          // What is there already says how it goes on.
          openYard(false);
          return;
        }
        if (!people) {
          tell(people.error());
          return;
        }
        settings_.setValue(QStringLiteral("open"), QStringLiteral("yard"));
        std::tie(people_, people_elsewhere_) = listed(*people);
        Q_EMIT peopleChanged();
        setState(Joining);
      });
}

void App::giveUpJoining() {
  clearProblem();
  backend_.ask(
      this,
      [](Desk& desk) -> Expected<void> {
        desk.keys.clear();
        return folder::dropKeys(*desk.folder);
      },
      [this](const Expected<void>& dropped) {
        if (!dropped) {
          tell(dropped.error());
          return;
        }
        people_.clear();
        people_elsewhere_.clear();
        Q_EMIT peopleChanged();
        leaveYard();
      });
}

void App::joined() {
  struct In {
    std::vector<KeyFile> people;
    std::optional<KeyFile> open;
  };
  backend_.ask(
      this,
      [utc_ms = backend_.now().utc_ms](Desk& desk) -> Expected<In> {
        Expected<std::vector<KeyFile>> people = peopleOf(*desk.folder, utc_ms);
        if (!people) return std::unexpected(people.error());
        In in{.people = *std::move(people), .open = {}};
        for (const KeyFile& person : in.people) {
          if (desk.keys.contains(person.id)) in.open = person;
        }
        return in;
      },
      [this](const Expected<In>& in) {
        if (!in) {
          tell(in.error());
          return;
        }
        std::tie(people_, people_elsewhere_) = listed(in->people);
        Q_EMIT peopleChanged();
        if (!in->open) {
          setState(Locked);
          return;
        }
        QStringList roles;
        for (const std::string& role : in->open->roles) roles.append(qt(role));
        enter(qt(in->open->name), qt(in->open->id), roles);
      });
}

void App::addPerson(const QString& name, const QStringList& roles, const QString& passphrase,
                    const QString& yard_passphrase) {
  clearProblem();
  backend_.ask(
      this,
      [name, roles, pass = plain(passphrase), yard_pass = plain(yard_passphrase),
       utc_ms = backend_.now().utc_ms](Desk& desk) -> Expected<std::string> {
        const Expected<records::SecretKey> yard_key = folder::openKey(*desk.folder, kYardKey, yard_pass);
        if (!yard_key) return std::unexpected(yard_key.error());
        const auto there = folder::keysOf(*desk.folder);
        if (!there) return std::unexpected(there.error());
        const Expected<folder::NamedKey> person =
            folder::makeKey(*desk.folder, labelFrom(name, *there), pass);
        if (!person) return std::unexpected(person.error());
        const auto added = session::addSigners(desk.folder->store, *yard_key,
                                               signersFor(person->key, roles, utc_ms), utc_ms);
        if (!added) return std::unexpected(added.error());
        const auto named = session::keepName(desk.folder->store, records::thumbprint(person->key),
                                             plain(name.trimmed()), folder::fillBytes, utc_ms);
        if (!named) return std::unexpected(named.error());
        return records::thumbprint(person->key);
      },
      [this](const Expected<std::string>& id) {
        if (!id) {
          tell(id.error());
          return;
        }
        readPeople();
      });
}

void App::readPeople() {
  backend_.ask(
      this, [utc_ms = backend_.now().utc_ms](Desk& desk) { return peopleOf(*desk.folder, utc_ms); },
      [this](const Expected<std::vector<KeyFile>>& people) {
        if (!people) return;
        std::tie(people_, people_elsewhere_) = listed(*people);
        Q_EMIT peopleChanged();
      });
}

void App::openDemo() {
  clearProblem();
  const std::string path = plain(QDir(start_.folder).filePath(QStringLiteral("demo")));
  progress_ = 0;
  Q_EMIT progressChanged();
  backend_.ask(
      this,
      [this, path, language = plain(language_), now = backend_.now()](Desk& desk) -> Expected<bool> {
        desk.keys.clear();
        desk.folder.reset();
        Expected<folder::Folder> opened = folder::openFolder(path);
        if (!opened) return std::unexpected(opened.error());
        desk.folder.emplace(*std::move(opened));
        const auto units = desk.folder->store.units();
        if (!units) return std::unexpected(units.error());
        const auto there = folder::keysOf(*desk.folder);
        if (!there) return std::unexpected(there.error());
        std::vector<records::SecretKey> keys;
        std::vector<std::string> names;
        for (const session::DemoPerson& person : session::demoPeople()) names.push_back(person.role);
        names.push_back(kYardKey);
        for (const std::string& name : names) {
          const bool made = std::ranges::any_of(*there, [&](const auto& key) { return key.name == name; });
          if (!made) {
            if (const auto done = folder::makeKey(*desk.folder, name, kDemoPassphrase); !done)
              return std::unexpected(done.error());
          }
          Expected<records::SecretKey> key = folder::openKey(*desk.folder, name, kDemoPassphrase);
          if (!key) return std::unexpected(key.error());
          keys.push_back(*std::move(key));
        }
        if (!units->empty()) return true;
        session::DemoYard yard{.yard_key = keys.back(),
                               .keys = {},
                               .installation = desk.folder->installation,
                               .epoch = desk.folder->epoch,
                               .engine = "hingepin " HINGEPIN_VERSION,
                               .language = language,
                               .now = now,
                               .device = desk.folder->installation};
        for (std::size_t index = 0; index + 1 < keys.size(); ++index) yard.keys.push_back(&keys[index]);
        const auto filled = session::fillDemoYard(
            desk.folder->store, yard, folder::fillBytes, folder::edge(), [this](int done, int total) {
              QMetaObject::invokeMethod(this, [this, done, total] {
                progress_ = static_cast<double>(done) / std::max(1, total);
                Q_EMIT progressChanged();
              });
              return true;
            });
        if (!filled) return std::unexpected(filled.error());
        return true;
      },
      [this](const Expected<bool>& made) {
        progress_ = 0;
        Q_EMIT progressChanged();
        if (!made) {
          tell(made.error());
          return;
        }
        openYard(true);
      });
}

void App::unlock(const QString& key_name, const QString& passphrase) {
  clearProblem();
  backend_.ask(
      this,
      [name = plain(key_name),
       pass = demo_ ? std::string(kDemoPassphrase) : plain(passphrase)](Desk& desk) -> Expected<std::string> {
        Expected<records::SecretKey> key = folder::openSealingKey(*desk.folder, name, pass);
        if (!key) return std::unexpected(key.error());
        const std::string id = key->id();
        desk.keys.erase(id);
        desk.keys.emplace(id, *std::move(key));
        return id;
      },
      [this, key_name](const Expected<std::string>& id) {
        if (!id) {
          tell(id.error());
          return;
        }
        QStringList roles;
        for (const QVariant& person : std::as_const(people_)) {
          if (person.toMap().value(QStringLiteral("id")).toString() == qt(*id))
            roles = person.toMap().value(QStringLiteral("roles")).toStringList();
        }
        enter(key_name, qt(*id), roles);
      });
}

void App::enter(const QString& key_name, const QString& key, const QStringList& roles) {
  person_ = key_name;
  for (const QVariant& each : std::as_const(people_)) {
    if (each.toMap().value(QStringLiteral("id")).toString() == key)
      person_ = each.toMap().value(QStringLiteral("name")).toString();
  }
  key_ = key;
  roles_ = roles;
  const QString last = settings_.value(QStringLiteral("role/") + key).toString();
  role_ = roles.contains(last) ? last : roles.value(0);
  Q_EMIT personChanged();
  setState(Open);
  Q_EMIT storeChanged();
}

void App::setRole(const QString& role) {
  if (!roles_.contains(role) || role == role_) return;
  role_ = role;
  settings_.setValue(QStringLiteral("role/") + key_, role);
  Q_EMIT personChanged();
  Q_EMIT storeChanged();
}

void App::lock() {
  backend_.ask(
      this,
      [](Desk& desk) {
        desk.keys.clear();
        return true;
      },
      [this](bool) {
        person_.clear();
        key_.clear();
        role_.clear();
        roles_.clear();
        Q_EMIT personChanged();
        setState(Locked);
      });
}

void App::leaveYard() {
  settings_.remove(QStringLiteral("open"));
  person_.clear();
  key_.clear();
  role_.clear();
  roles_.clear();
  Q_EMIT personChanged();
  setState(FirstStart);
}

QString App::passphraseProblem(const QString& passphrase) const {
  const Expected<void> checked = records::checkPassphrase(plain(passphrase));
  return checked ? QString() : say(checked.error());
}

QString App::roleName(const QString& role) {
  if (role == QLatin1String("technician")) return tr("Technician");
  if (role == QLatin1String("operator")) return tr("Operator");
  if (role == QLatin1String("supervisor")) return tr("Supervisor");
  if (role == QLatin1String("safety-lead")) return tr("Safety lead");
  if (role == QLatin1String("yard-clerk")) return tr("Yard checker");
  if (role == QLatin1String("customer")) return tr("Customer");
  return role;
}

QString App::signalName(const QString& word) {
  if (word == QLatin1String("danger")) return tr("DANGER");
  if (word == QLatin1String("warning")) return tr("WARNING");
  if (word == QLatin1String("caution")) return tr("CAUTION");
  return tr("NOTICE");
}

QString App::languageName(const QString& language) {
  if (language == QLatin1String("en")) return QStringLiteral("English");
  if (language == QLatin1String("es")) return QStringLiteral("Español");
  if (language == QLatin1String("fr")) return QStringLiteral("Français");
  if (language == QLatin1String("de")) return QStringLiteral("Deutsch");
  if (language == QLatin1String("pt-BR")) return QStringLiteral("Português (Brasil)");
  if (language == QLatin1String("ar")) return QStringLiteral("العربية");
  return language;
}

QString App::number(double value, int decimals) const {
  return qt(
      session::numberIn(plain(QString::number(value, 'f', decimals)), session::localeOf(plain(language_))));
}

QString App::date(double utc_ms) const {
  return qt(session::dateText(static_cast<std::int64_t>(utc_ms), reader()));
}

QString App::dateAndTime(double utc_ms) const {
  return qt(session::dateTimeText(static_cast<std::int64_t>(utc_ms), reader()));
}

}  // namespace hingepin::mobile
