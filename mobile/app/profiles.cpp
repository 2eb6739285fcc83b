// SPDX-License-Identifier: GPL-3.0-or-later
#include "profiles.h"

#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLocale>
#include <QUrl>
#include <array>

#include "app.h"
#include "engine/folder/files.h"
#include "engine/formats/proof_json.h"
#include "engine/session/profile.h"
#include "engine/units/ucum.h"
#include "job_view.h"
#include "text.h"

namespace hingepin::mobile {
namespace {

Profiles* the_profiles = nullptr;

/// A member of a form that is a number in a fixed unit, and where it stands in a profile.
struct Quantity {
  const char* field;
  const char* ucum;
};

QString numberIn(const QString& quantity, const char* ucum, const QString& language) {
  const Expected<ReadQuantity> read = readAnyQuantity(plain(quantity));
  const std::optional<Unit> unit = findUnit(ucum);
  if (!read || !unit || read->unit.dimension != unit->dimension) return {};
  QString text = qt(writeQuantity(read->value_si, ucum)).section(QLatin1Char(' '), 0, 0);
  return text.replace(QLatin1Char('.'), qt(session::localeOf(plain(language)).decimal_mark));
}

/// "130,5" in mm as "130.5 mm"; "" for nothing typed.
QString quantityFrom(const QVariant& typed, const char* ucum, const QString& language) {
  QString number = typed.toString().trimmed();
  if (number.isEmpty()) return {};
  number.replace(qt(session::localeOf(plain(language)).decimal_mark), QStringLiteral("."));
  number.replace(QChar(0x2212), QLatin1Char('-'));
  return number + QLatin1Char(' ') + QLatin1String(ucum);
}

QJsonObject objectOf(const QString& text) { return QJsonDocument::fromJson(text.toUtf8()).object(); }
QString textOf(const QJsonObject& object) {
  return QString::fromUtf8(QJsonDocument(object).toJson(QJsonDocument::Indented));
}

void put(QJsonObject& object, const QString& key, const QString& value) {
  if (value.isEmpty()) {
    object.remove(key);
  } else {
    object[key] = value;
  }
}

void putPair(QJsonObject& object, const QString& key, const QString& first, const QString& second) {
  if (first.isEmpty() && second.isEmpty()) {
    object.remove(key);
  } else {
    object[key] = QJsonArray{first, second};
  }
}

constexpr const char* kShort = "mm";

}  // namespace

Profiles::Profiles(App& app) : app_(app) { the_profiles = this; }
Profiles::~Profiles() { the_profiles = nullptr; }
Profiles* Profiles::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_profiles, QJSEngine::CppOwnership);
  return the_profiles;
}

void Profiles::show(const QVariantMap& form) {
  form_ = form;
  complain({});
  Q_EMIT formChanged();
}

void Profiles::complain(const QString& problem, const QString& at) {
  problem_ = problem;
  problem_at_ = at;
  Q_EMIT problemChanged();
}

void Profiles::tellKept(const Expected<std::string>& kept) {
  if (!kept) {
    complain(app_.say(kept.error()) + QStringLiteral(" (") + qt(kept.error().place.pointer) +
             QStringLiteral(")"));
    return;
  }
  complain({});
  readAttachments();
  Q_EMIT app_.storeChanged();
  Q_EMIT saved(qt(*kept));
}

void Profiles::openUnit(const QString& id) {
  linkage_.clear();
  if (id.isEmpty()) {
    text_.clear();
    show({{QStringLiteral("count"), QStringLiteral("2")},
          {QStringLiteral("teaching"), QStringList{QStringLiteral("own-routine")}},
          {QStringLiteral("monitor"),
           QVariantList{QVariantMap{
               {QStringLiteral("quantity"), QStringLiteral("indication")},
               {QStringLiteral("unit"), app_.system() == UnitSystem::UsCustomary ? QStringLiteral("[lb_av]")
                                                                                 : QStringLiteral("kg")}}}}});
    return;
  }
  app_.backend().ask(
      this, [id = plain(id)](Desk& desk) { return desk.folder->store.unit(id); },
      [this](const Expected<std::optional<store::Unit>>& unit) {
        if (!unit || !*unit) return;
        text_ = qt((*unit)->profile);
        const QJsonObject profile = objectOf(text_);
        const QJsonObject block = profile[QStringLiteral("unit")].toObject();
        const QJsonObject cylinders = block[QStringLiteral("lift_cylinders")].toObject();
        const QJsonArray window = block[QStringLiteral("weigh_window")].toArray();
        const QJsonObject entries = profile[QStringLiteral("entries")].toObject();
        const QString language = app_.language();
        QVariantList monitor;
        for (const QJsonValue& shown : profile[QStringLiteral("monitor")].toArray())
          monitor.append(shown.toObject().toVariantMap());
        QStringList teaching;
        for (const QJsonValue& way : profile[QStringLiteral("teaching")].toArray())
          teaching.append(way.toString());
        show(
            {{QStringLiteral("id"), block[QStringLiteral("id")].toString()},
             {QStringLiteral("count"), QString::number(cylinders[QStringLiteral("count")].toInt(2))},
             {QStringLiteral("bore"),
              numberIn(cylinders[QStringLiteral("bore")].toString(), kShort, language)},
             {QStringLiteral("rod"), numberIn(cylinders[QStringLiteral("rod")].toString(), kShort, language)},
             {QStringLiteral("payload"),
              numberIn(block[QStringLiteral("rated_payload")].toString(), "kg", language)},
             {QStringLiteral("windowLow"), numberIn(window.at(0).toString(), "deg", language)},
             {QStringLiteral("windowHigh"), numberIn(window.at(1).toString(), "deg", language)},
             {QStringLiteral("oilMinimum"),
              numberIn(entries[QStringLiteral("oil-minimum")].toString(), "Cel", language)},
             {QStringLiteral("testMass"),
              numberIn(entries[QStringLiteral("test-mass")].toString(), "kg", language)},
             {QStringLiteral("recheckHours"),
              numberIn(profile[QStringLiteral("recheck_after")].toString(), "h", language)},
             {QStringLiteral("hasLinkage"), block.contains(QStringLiteral("linkage"))},
             {QStringLiteral("practice"), profile[QStringLiteral("practice")].toBool()},
             {QStringLiteral("teaching"), teaching},
             {QStringLiteral("monitor"), monitor}});
      });
}

void Profiles::saveUnit(const QVariantMap& form) {
  const QString language = app_.language();
  const auto typed = [&](const char* field, const char* ucum) {
    return quantityFrom(form.value(QLatin1String(field)), ucum, language);
  };
  QJsonObject profile = objectOf(text_);
  QJsonObject block = profile[QStringLiteral("unit")].toObject();
  const QString id = form.value(QStringLiteral("id")).toString().trimmed();
  block[QStringLiteral("id")] = id;
  QJsonObject cylinders = block[QStringLiteral("lift_cylinders")].toObject();
  cylinders[QStringLiteral("count")] = form.value(QStringLiteral("count")).toString().toInt();
  put(cylinders, QStringLiteral("bore"), typed("bore", kShort));
  put(cylinders, QStringLiteral("rod"), typed("rod", kShort));
  block[QStringLiteral("lift_cylinders")] = cylinders;
  put(block, QStringLiteral("rated_payload"), typed("payload", "kg"));
  putPair(block, QStringLiteral("weigh_window"), typed("windowLow", "deg"), typed("windowHigh", "deg"));
  if (!linkage_.isEmpty()) {
    block[QStringLiteral("linkage")] = objectOf(linkage_);
    block.remove(QStringLiteral("linkage_u"));  // was of the one before
  }
  profile[QStringLiteral("format")] = QStringLiteral("hingepin-unit/1");
  profile[QStringLiteral("unit")] = block;
  profile[QStringLiteral("teaching")] =
      QJsonArray::fromStringList(form.value(QStringLiteral("teaching")).toStringList());
  QJsonArray monitor;
  for (const QVariant& each : form.value(QStringLiteral("monitor")).toList()) {
    const QVariantMap shown = each.toMap();
    QJsonObject object{{QStringLiteral("quantity"), shown.value(QStringLiteral("quantity")).toString()},
                       {QStringLiteral("unit"), shown.value(QStringLiteral("unit")).toString()}};
    put(object, QStringLiteral("step"), shown.value(QStringLiteral("step")).toString());
    monitor.append(object);
  }
  profile[QStringLiteral("monitor")] = monitor;
  QJsonObject entries = profile[QStringLiteral("entries")].toObject();
  put(entries, QStringLiteral("oil-minimum"), typed("oilMinimum", "Cel"));
  put(entries, QStringLiteral("test-mass"), typed("testMass", "kg"));
  if (entries.isEmpty()) {
    profile.remove(QStringLiteral("entries"));
  } else {
    profile[QStringLiteral("entries")] = entries;
  }
  put(profile, QStringLiteral("recheck_after"), typed("recheckHours", "h"));
  if (form.value(QStringLiteral("practice")).toBool()) {
    profile[QStringLiteral("practice")] = true;
  } else {
    profile.remove(QStringLiteral("practice"));
  }
  const std::string text = plain(textOf(profile));
  app_.backend().ask(
      this,
      [text](Desk& desk) -> Expected<std::string> {
        const Expected<session::UnitProfile> read = session::readUnitProfile(text, "", folder::edge());
        if (!read) return std::unexpected(read.error());
        if (const Expected<void> kept = desk.folder->store.putUnit({read->id, text}); !kept)
          return std::unexpected(kept.error());
        return read->id;
      },
      [this](const Expected<std::string>& kept) { tellKept(kept); });
}

void Profiles::openAttachment(const QString& id) {
  if (id.isEmpty()) {
    text_.clear();
    show({});
    return;
  }
  app_.backend().ask(
      this, [id = plain(id)](Desk& desk) { return desk.folder->store.attachment(id); },
      [this](const Expected<std::optional<store::Attachment>>& attachment) {
        if (!attachment || !*attachment) return;
        text_ = qt((*attachment)->profile);
        const QJsonObject profile = objectOf(text_);
        const QJsonObject block = profile[QStringLiteral("attachment")].toObject();
        const QJsonObject entries = profile[QStringLiteral("entries")].toObject();
        const QString language = app_.language();
        const auto at = [&](const char* key, int index) {
          return numberIn(block[QLatin1String(key)].toArray().at(index).toString(), kShort, language);
        };
        show(
            {{QStringLiteral("id"), block[QStringLiteral("id")].toString()},
             {QStringLiteral("coupler"),
              numberIn(block[QStringLiteral("coupler")].toString(), "kg", language)},
             {QStringLiteral("bucket"), numberIn(block[QStringLiteral("bucket")].toString(), "kg", language)},
             {QStringLiteral("centerAlong"), at("payload_center", 0)},
             {QStringLiteral("centerAcross"), at("payload_center", 1)},
             {QStringLiteral("heelAlong"), at("heel", 0)},
             {QStringLiteral("heelAcross"), at("heel", 1)},
             {QStringLiteral("edgeAlong"), at("cutting_edge", 0)},
             {QStringLiteral("edgeAcross"), at("cutting_edge", 1)},
             {QStringLiteral("upper"),
              numberIn(entries[QStringLiteral("upper-height")].toString(), kShort, language)},
             {QStringLiteral("lower"),
              numberIn(entries[QStringLiteral("lower-height")].toString(), kShort, language)}});
      });
}

void Profiles::saveAttachment(const QVariantMap& form) {
  const QString language = app_.language();
  const auto typed = [&](const char* field, const char* ucum) {
    return quantityFrom(form.value(QLatin1String(field)), ucum, language);
  };
  QJsonObject profile = objectOf(text_);
  QJsonObject block = profile[QStringLiteral("attachment")].toObject();
  block[QStringLiteral("id")] = form.value(QStringLiteral("id")).toString().trimmed();
  put(block, QStringLiteral("coupler"), typed("coupler", "kg"));
  put(block, QStringLiteral("bucket"), typed("bucket", "kg"));
  putPair(block, QStringLiteral("payload_center"), typed("centerAlong", kShort),
          typed("centerAcross", kShort));
  putPair(block, QStringLiteral("heel"), typed("heelAlong", kShort), typed("heelAcross", kShort));
  putPair(block, QStringLiteral("cutting_edge"), typed("edgeAlong", kShort), typed("edgeAcross", kShort));
  profile[QStringLiteral("format")] = QStringLiteral("hingepin-attachment/1");
  profile[QStringLiteral("attachment")] = block;
  QJsonObject entries = profile[QStringLiteral("entries")].toObject();
  put(entries, QStringLiteral("upper-height"), typed("upper", kShort));
  put(entries, QStringLiteral("lower-height"), typed("lower", kShort));
  if (entries.isEmpty()) {
    profile.remove(QStringLiteral("entries"));
  } else {
    profile[QStringLiteral("entries")] = entries;
  }
  const std::string text = plain(textOf(profile));
  app_.backend().ask(
      this,
      [text](Desk& desk) -> Expected<std::string> {
        const Expected<session::AttachmentProfile> read =
            session::readAttachmentProfile(text, "", folder::edge());
        if (!read) return std::unexpected(read.error());
        if (const Expected<void> kept = desk.folder->store.putAttachment({read->id, text}); !kept)
          return std::unexpected(kept.error());
        return read->id;
      },
      [this](const Expected<std::string>& kept) { tellKept(kept); });
}

void Profiles::openTerms(const QString& unit) {
  terms_.clear();
  terms_text_.clear();
  complain({});
  app_.backend().ask(
      this,
      [unit = plain(unit)](Desk& desk) -> Expected<std::string> {
        if (unit.empty()) return desk.folder->store.yardProfile();
        const Expected<std::optional<store::Unit>> stored = desk.folder->store.unit(unit);
        if (!stored) return std::unexpected(stored.error());
        return *stored ? (*stored)->profile : std::string();
      },
      [this](const Expected<std::string>& profile) {
        if (!profile) {
          complain(app_.say(profile.error()));
          return;
        }
        terms_text_ = qt(*profile);
        const QJsonObject proof = objectOf(terms_text_)[QStringLiteral("proof")].toObject();
        const QJsonObject tolerance = proof[QStringLiteral("tolerance")].toObject();
        const QJsonObject decision = proof[QStringLiteral("decision")].toObject();
        const QJsonArray steps = tolerance[QStringLiteral("steps")].toArray();
        const QString language = app_.language();
        // Pounds stay pounds: their intervals are whole numbers, and the tables count in them.
        const QString known = tolerance[QStringLiteral("interval")]
                                  .toString(steps.at(0).toObject()[QStringLiteral("up_to")].toString())
                                  .section(QLatin1Char(' '), 1);
        const bool is_usual = known == QLatin1String("kg") || known == QLatin1String("[lb_av]");
        const QString mass = is_usual                                   ? known
                             : app_.system() == UnitSystem::UsCustomary ? QStringLiteral("[lb_av]")
                                                                        : QStringLiteral("kg");
        const std::string ucum = plain(mass);
        QVariantList rows;
        for (const QJsonValue& each : steps) {
          const QJsonObject step = each.toObject();
          rows.append(QVariantMap{{QStringLiteral("upTo"), numberIn(step[QStringLiteral("up_to")].toString(),
                                                                    ucum.c_str(), language)},
                                  {QStringLiteral("limit"), numberIn(step[QStringLiteral("limit")].toString(),
                                                                     ucum.c_str(), language)}});
        }
        QString confidence;
        if (const QJsonValue share = decision[QStringLiteral("confidence")]; share.isDouble())
          confidence = numberIn(QString::number(100.0 * share.toDouble(), 'g', 6) + QStringLiteral(" %"), "%",
                                language);
        terms_ = {
            {QStringLiteral("scheme"), tolerance[QStringLiteral("scheme")].toString()},
            {QStringLiteral("limit"), numberIn(tolerance[QStringLiteral("limit")].toString(), "%", language)},
            {QStringLiteral("of"), tolerance[QStringLiteral("of")].toString(QStringLiteral("reference"))},
            {QStringLiteral("accuracyClass"), tolerance[QStringLiteral("class")].toString()},
            {QStringLiteral("interval"),
             numberIn(tolerance[QStringLiteral("interval")].toString(), ucum.c_str(), language)},
            {QStringLiteral("stage"), tolerance[QStringLiteral("stage")].toString()},
            {QStringLiteral("steps"), rows},
            {QStringLiteral("mass"), mass},
            {QStringLiteral("massSymbol"), unitSymbol(ucum, session::localeOf(app_.reader().language))},
            {QStringLiteral("rule"), decision[QStringLiteral("rule")].toString()},
            {QStringLiteral("confidence"), confidence}};
        Q_EMIT termsChanged();
      });
}

void Profiles::saveTerms(const QString& unit, const QVariantMap& form) {
  const QString language = app_.language();
  const auto text = [&](const char* field) { return form.value(QLatin1String(field)).toString(); };
  const std::string mass = plain(text("mass"));
  QString missing;  // where a number has to be typed
  const auto typed = [&](const QVariantMap& from, const char* field, const char* ucum, const QString& at) {
    const QString quantity = quantityFrom(from.value(QLatin1String(field)), ucum, language);
    if (quantity.isEmpty() && missing.isEmpty()) missing = at;
    return quantity;
  };
  const QString tolerance_at = QStringLiteral("/proof/tolerance/");
  const QString scheme = text("scheme");
  QJsonObject tolerance{{QStringLiteral("scheme"), scheme}};
  if (scheme == QLatin1String("percent")) {
    tolerance[QStringLiteral("limit")] = typed(form, "limit", "%", tolerance_at + QStringLiteral("limit"));
    tolerance[QStringLiteral("of")] = text("of");
  } else if (scheme == QLatin1String("steps")) {
    QJsonArray steps;
    for (const QVariant& each : form.value(QStringLiteral("steps")).toList()) {
      const QVariantMap row = each.toMap();
      const QString at = tolerance_at + QStringLiteral("steps/%1/").arg(steps.size());
      steps.append(QJsonObject{
          {QStringLiteral("up_to"), typed(row, "upTo", mass.c_str(), at + QStringLiteral("up_to"))},
          {QStringLiteral("limit"), typed(row, "limit", mass.c_str(), at + QStringLiteral("limit"))}});
    }
    tolerance[QStringLiteral("steps")] = steps;
  } else if (!scheme.isEmpty()) {
    tolerance[QStringLiteral("class")] = text("accuracyClass");
    if (text("accuracyClass").isEmpty()) {
      complain(tr("Choose a class."), tolerance_at + QStringLiteral("class"));
      return;
    }
    tolerance[QStringLiteral("interval")] =
        typed(form, "interval", mass.c_str(), tolerance_at + QStringLiteral("interval"));
    tolerance[QStringLiteral("stage")] = text("stage");
  }
  QJsonObject profile = objectOf(terms_text_);
  QJsonObject proof = profile[QStringLiteral("proof")].toObject();
  QJsonObject decision = proof[QStringLiteral("decision")].toObject();
  const QString rule = text("rule");
  decision[QStringLiteral("rule")] = rule;
  decision.remove(QStringLiteral("confidence"));
  if (rule == QLatin1String("guarded")) {
    const QString at = QStringLiteral("/proof/decision/confidence");
    const Expected<double> share = readSi(plain(typed(form, "confidence", "%", at)), Dimension::Number);
    if (missing.isEmpty() && (!share || *share < 0.5 || *share > 0.9999)) {
      complain(tr("Type a number from 50 to 99.99."), at);
      return;
    }
    if (share) decision[QStringLiteral("confidence")] = *share;
  }
  if (!missing.isEmpty()) {
    complain(tr("Type a number."), missing);
    return;
  }
  const auto putObject = [](QJsonObject& to, const QString& key, const QJsonObject& value, bool is_said) {
    if (is_said) {
      to[key] = value;
    } else {
      to.remove(key);
    }
  };
  putObject(proof, QStringLiteral("tolerance"), tolerance, !scheme.isEmpty());
  putObject(proof, QStringLiteral("decision"), decision, !rule.isEmpty());
  putObject(profile, QStringLiteral("proof"), proof, !proof.isEmpty());
  if (unit.isEmpty()) profile[QStringLiteral("format")] = QStringLiteral("hingepin-yard/1");
  app_.backend().ask(
      this,
      [unit = plain(unit), kept = plain(textOf(profile))](Desk& desk) -> Expected<std::string> {
        if (unit.empty()) {
          if (const auto read = session::readYardProfile(kept, "", folder::edge()); !read)
            return std::unexpected(read.error());
          if (const auto put = desk.folder->store.putYardProfile(kept); !put)
            return std::unexpected(put.error());
          return unit;
        }
        if (const auto read = session::readUnitProfile(kept, "", folder::edge()); !read)
          return std::unexpected(read.error());
        if (const auto put = desk.folder->store.putUnit({unit, kept}); !put)
          return std::unexpected(put.error());
        return unit;
      },
      [this](const Expected<std::string>& kept) {
        if (kept) {
          tellKept(kept);
        } else {
          complain(app_.say(kept.error()), qt(kept.error().place.pointer));
        }
      });
}

QStringList Profiles::classesOf(const QString& scheme) const {
  QStringList classes;
  for (const std::string& each : formats::classesOfScheme(plain(scheme))) classes.append(qt(each));
  return classes;
}

void Profiles::readLinkage(const QString& file) {
  const QString path = QUrl(file).isLocalFile() ? QUrl(file).toLocalFile() : file;
  const Expected<std::string> text = folder::readFile(plain(path));
  if (!text) {
    complain(app_.say(text.error()));
    return;
  }
  QJsonObject object = objectOf(qt(*text));
  if (object.contains(QStringLiteral("unit"))) object = object[QStringLiteral("unit")].toObject();
  if (object.contains(QStringLiteral("linkage"))) object = object[QStringLiteral("linkage")].toObject();
  if (!object.contains(QStringLiteral("boom_length"))) {
    complain(tr(
        "This file holds no linkage. A unit's profile, a calibration job, or the linkage alone is needed."));
    return;
  }
  linkage_ = textOf(object);
  form_[QStringLiteral("hasLinkage")] = true;
  complain({});
  Q_EMIT formChanged();
}

void Profiles::readAttachments() {
  app_.backend().ask(
      this, [](Desk& desk) { return desk.folder->store.attachments(); },
      [this](const Expected<std::vector<store::Attachment>>& attachments) {
        if (!attachments) return;
        attachments_.clear();
        for (const store::Attachment& each : *attachments) attachments_.append(qt(each.id));
        Q_EMIT attachmentsChanged();
      });
}

QVariantList Profiles::quantities() const {
  struct Known {
    const char* id;
    const char* text;
    std::vector<const char*> units;
  };
  static const std::array<Known, 9> known = {{
      {"indication", QT_TR_NOOP("Mass on the scale"), {"kg", "t", "[lb_av]", "[ston_av]", "[lton_av]"}},
      {"boom-angle", QT_TR_NOOP("Boom angle"), {"deg"}},
      {"boom-sensor", QT_TR_NOOP("Boom sensor"), {"V", "mV", "1", "deg"}},
      {"bucket-sensor", QT_TR_NOOP("Bucket sensor"), {"V", "mV", "1", "deg"}},
      {"head-pressure", QT_TR_NOOP("Lift pressure, head side"), {"bar", "kPa", "MPa", "[psi]"}},
      {"rod-pressure", QT_TR_NOOP("Lift pressure, rod side"), {"bar", "kPa", "MPa", "[psi]"}},
      {"oil-temperature", QT_TR_NOOP("Oil temperature"), {"Cel", "[degF]"}},
      {"operating-hours", QT_TR_NOOP("Operating hours"), {"h"}},
      {"fuel-level", QT_TR_NOOP("Fuel level"), {"%"}},
  }};
  QVariantList list;
  for (const Known& each : known) {
    QVariantList units;
    for (const char* code : each.units) {
      const QString symbol = unitSymbol(code, session::localeOf(app_.reader().language));
      units.append(QVariantMap{{QStringLiteral("code"), QString::fromLatin1(code)},
                               {QStringLiteral("symbol"), symbol.isEmpty() ? tr("counts") : symbol}});
    }
    list.append(QVariantMap{{QStringLiteral("id"), QString::fromLatin1(each.id)},
                            {QStringLiteral("text"), tr(each.text)},
                            {QStringLiteral("units"), units}});
  }
  return list;
}

}  // namespace hingepin::mobile
