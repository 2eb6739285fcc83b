// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QQmlEngine>
#include <QString>
#include <QThread>
#include <QTimer>
#include <QVariantList>
#include <QVariantMap>
#include <atomic>
#include <optional>
#include <string>

#include "engine/base/error.h"
#include "engine/folder/far_side.h"

namespace hingepin::mobile {

class App;

/// The far side of the yard: where it is, what waits to be sent and why, and exchanges with it. They run on a
/// thread with an opening of the store of its own, so neither the screen nor a job waits for the network.
class Syncer : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_SINGLETON
  Q_PROPERTY(QVariantMap farSide MEMBER far_side_ NOTIFY changed)
  Q_PROPERTY(bool canBegin READ canBegin NOTIFY changed)
  Q_PROPERTY(bool running READ running NOTIFY changed)
  Q_PROPERTY(QString progress MEMBER progress_ NOTIFY changed)
  Q_PROPERTY(QString problem MEMBER problem_ NOTIFY changed)
  Q_PROPERTY(QStringList findings MEMBER findings_ NOTIFY changed)
  Q_PROPERTY(QString rests READ rests NOTIFY changed)
  Q_PROPERTY(bool byItself MEMBER by_itself_ WRITE setByItself NOTIFY changed)
  Q_PROPERTY(bool overMetered MEMBER over_metered_ WRITE setOverMetered NOTIFY changed)
  Q_PROPERTY(QVariantList waiting MEMBER waiting_ NOTIFY changed)
  /// Of the record that readRecord() named: rows of label, value, note, verdict.
  Q_PROPERTY(QVariantList recordState MEMBER record_state_ NOTIFY recordStateChanged)
  Q_PROPERTY(QVariantList quarantine MEMBER quarantine_ NOTIFY changed)

 public:
  explicit Syncer(App& app);
  ~Syncer() override;
  static Syncer* create(QQmlEngine* engine, QJSEngine* script);

  /// Whether a far side is set up whose password is at hand.
  [[nodiscard]] bool canBegin() const { return !secret_.empty() && !far_side_.isEmpty(); }
  [[nodiscard]] bool running() const { return running_; }
  /// Why no exchange begins by itself now, "" where one may: a network that is paid for by what it carries,
  /// or none. Qt tells nothing of the battery.
  [[nodiscard]] QString rests() const;
  void setByItself(bool on);
  void setOverMetered(bool on);

  /// Reads again where the far side is, what waits and what is in quarantine.
  Q_INVOKABLE void read();
  Q_INVOKABLE void readRecord(const QString& record);
  /// @param form kind ("webdav", "s3"), url, user, bucket, region, ca_file
  /// @param secret password or secret key; "" keeps the one that is there. It is sealed with the key of
  /// whoever is at the phone, who also vouches for this phone as one of the yard's.
  Q_INVOKABLE void setUp(const QVariantMap& form, const QString& secret);
  Q_INVOKABLE void begin();
  /// Ends at the next step; the next exchange goes on there.
  Q_INVOKABLE void stop() { goes_on_ = false; }

 Q_SIGNALS:
  void changed();
  void recordStateChanged();
  /// An exchange was set up, or ended.
  void done();

 private:
  void show(const sync::Progress& progress);
  void end(const Expected<sync::Outcome>& outcome);
  /// Begins an exchange if one may begin by itself.
  void consider();

  App& app_;
  QVariantMap far_side_;
  std::string folder_;  ///< of the yard
  std::string secret_;
  std::string key_;  ///< whose secret it is
  QString progress_;
  QString problem_;
  QStringList findings_;
  QVariantList waiting_, quarantine_, record_state_;
  bool running_ = false;
  bool by_itself_ = true;
  bool over_metered_ = false;
  std::optional<Error> last_;  ///< what kept the last exchange from being whole
  std::atomic<bool> goes_on_ = true;
  QTimer again_;
  QThread thread_;
  QObject* worker_;
};

}  // namespace hingepin::mobile
