// SPDX-License-Identifier: GPL-3.0-or-later
#include "exporter.h"

#include <QDir>
#include <QFile>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QRegularExpression>
#include <QStandardPaths>
#include <QTextDocument>
#ifdef Q_OS_ANDROID
#include <QCoreApplication>
#include <QFileInfo>
#include <QJniObject>
#endif

#include "app.h"
#include "engine/folder/evidence.h"
#include "engine/folder/files.h"
#include "engine/session/certificate.h"
#include "engine/session/dispute.h"
#include "engine/session/document.h"
#include "engine/session/moment.h"
#include "qr.h"
#include "text.h"

namespace hingepin::mobile {
namespace {

Exporter* the_exporter = nullptr;

QString escaped(const std::string& text) { return qt(text).toHtmlEscaped(); }

/// A word beside every verdict; no colour alone.
QString sign(const std::string& verdict) {
  return verdict == "passed"    ? QStringLiteral("✓ ")
         : verdict == "failed"  ? QStringLiteral("✖ ")
         : verdict == "warning" ? QStringLiteral("⚠ ")
                                : QString();
}

QString tableOf(const std::vector<session::DocumentRow>& rows) {
  QString html = QStringLiteral("<table width='100%' cellspacing='0' cellpadding='3'>");
  for (const session::DocumentRow& row : rows) {
    html += QStringLiteral("<tr><td width='52%'>%1</td><td><b>%2%3</b><br/><small>%4</small></td></tr>")
                .arg(escaped(row.label), sign(row.verdict), escaped(row.value), escaped(row.note));
  }
  return html + QStringLiteral("</table>");
}

QString htmlOf(const session::Document& document, bool right_to_left) {
  QString html =
      QStringLiteral("<html dir='%1'><body style='font-size:9pt'><h1>%2</h1>")
          .arg(right_to_left ? QStringLiteral("rtl") : QStringLiteral("ltr"), escaped(document.title));
  for (const std::string& stamp : document.stamps)
    html += QStringLiteral("<h2 style='border:2px solid black'>%1</h2>").arg(escaped(stamp));
  html += QStringLiteral("<p><b>%1</b></p>").arg(escaped(document.not_for_trade));
  for (const session::DocumentSection& section : document.sections) {
    html += QStringLiteral("<h2>%1</h2>").arg(escaped(section.title)) + tableOf(section.rows);
  }
  return html + QStringLiteral("<p><img src='qr'/></p><p><small>%1</small></p></body></html>")
                    .arg(escaped(document.record));
}

/// Tables with their columns from right to left, which Qt's text layout does not turn round by itself. The
/// tables of our documents have no others within them.
QString mirrored(const QString& html) {
  static const QRegularExpression row(QStringLiteral("<tr>(.*?)</tr>"),
                                      QRegularExpression::DotMatchesEverythingOption);
  static const QRegularExpression cell(QStringLiteral("<t[dh][ >].*?</t[dh]>"),
                                       QRegularExpression::DotMatchesEverythingOption);
  QString made;
  qsizetype end = 0;
  for (auto rows = row.globalMatch(html); rows.hasNext();) {
    const QRegularExpressionMatch each = rows.next();
    QString turned;
    for (auto cells = cell.globalMatch(each.captured(1)); cells.hasNext();)
      turned.prepend(cells.next().captured());
    made +=
        html.mid(end, each.capturedStart() - end) + QStringLiteral("<tr>") + turned + QStringLiteral("</tr>");
    end = each.capturedEnd();
  }
  return made + html.mid(end);
}

bool writePdf(const QString& path, const QString& html, const QImage& qr, const QPageSize& page,
              bool right_to_left) {
  QPdfWriter writer(path);
  writer.setPageSize(page);
  writer.setPageMargins(QMarginsF(15, 15, 15, 15), QPageLayout::Millimeter);
  writer.setResolution(96);
  writer.setCreator(QStringLiteral("Hingepin " HINGEPIN_VERSION));
  QTextDocument text;
  QTextOption option(Qt::AlignLeft);  // where lines begin, whichever side that is
  option.setTextDirection(right_to_left ? Qt::RightToLeft : Qt::LeftToRight);
  text.setDefaultTextOption(option);
  if (!qr.isNull()) text.addResource(QTextDocument::ImageResource, QUrl(QStringLiteral("qr")), qr);
  text.setHtml(right_to_left ? mirrored(html) : html);
  text.setPageSize(writer.pageLayout().paintRectPixels(96).size());
  text.print(&writer);
  return QFile::exists(path);
}

}  // namespace

Exporter::Exporter(App& app)
    : app_(app), folder_(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)) {
  the_exporter = this;
}
Exporter::~Exporter() { the_exporter = nullptr; }
Exporter* Exporter::create(QQmlEngine*, QJSEngine*) {
  QJSEngine::setObjectOwnership(the_exporter, QJSEngine::CppOwnership);
  return the_exporter;
}

QString Exporter::pathFor(const QString& name) const {
  QDir().mkpath(folder_);
  return QDir(folder_).filePath(name);
}

void Exporter::clear() {
  saved_.clear();
  Q_EMIT changed();
}

bool Exporter::canShare() {
#ifdef Q_OS_ANDROID
  return true;
#else
  return false;
#endif
}

void Exporter::share(const QString& title) {
#ifdef Q_OS_ANDROID
  if (saved_.isEmpty()) return;
  // HandOver.java lends what lies in this folder, and what was handed over before is no longer wanted there.
  QDir folder(QDir(QStandardPaths::writableLocation(QStandardPaths::CacheLocation))
                  .filePath(QStringLiteral("handover")));
  folder.removeRecursively();
  folder.mkpath(QStringLiteral("."));
  const QString name = QFileInfo(saved_).fileName();
  if (!QFile::copy(saved_, folder.filePath(name))) {
    done(folder.filePath(name), false);
    return;
  }
  const QJniObject activity = QNativeInterface::QAndroidApplication::context();
  QJniObject::callStaticMethod<void>(
      "org/hingepin/app/HandOver", "share", "(Landroid/app/Activity;Ljava/lang/String;Ljava/lang/String;)V",
      activity.object(), QJniObject::fromString(name).object(), QJniObject::fromString(title).object());
#else
  Q_UNUSED(title)
#endif
}

void Exporter::done(const QString& path, bool ok) {
  if (ok) {
    saved_ = path;
  } else {
    app_.tell({ErrorKind::IoFailed, {"file-write-failed", {{"path", plain(path)}, {"reason", "PDF"}}}, {}});
  }
  Q_EMIT changed();
}

void Exporter::document(const QString& record) {
  const QString path = pathFor(QStringLiteral("hingepin-%1.pdf").arg(record.left(12)));
  const QPageSize page(letter_ ? QPageSize::Letter : QPageSize::A4);
  app_.backend().ask(
      this,
      [record = plain(record), reader = app_.reader()](Desk& desk) {
        return session::documentOf(desk.folder->store, record, reader);
      },
      [this, path, page](const Expected<session::Document>& document) {
        if (!document) {
          app_.tell(document.error());
          return;
        }
        done(path, writePdf(path, htmlOf(*document, app_.rightToLeft()), qrImage(document->qr_text, 4), page,
                            app_.rightToLeft()));
      });
}

void Exporter::file(const QString& record) {
  const QString path = pathFor(QStringLiteral("%1.json").arg(record));
  app_.backend().ask(
      this,
      [record = plain(record), path = plain(path)](Desk& desk) -> Expected<void> {
        const auto statement = desk.folder->store.statement(record);
        if (!statement) return std::unexpected(statement.error());
        if (!*statement) return fail(ErrorKind::NotFound, "record-not-in-store", {{"record", record}});
        return folder::writeFile(path, (*statement)->text);
      },
      [this, path](const Expected<void>& written) {
        if (!written) {
          app_.tell(written.error());
          return;
        }
        done(path, true);
      });
}

void Exporter::log() {
  if (app_.diagnostics() == nullptr) return;
  const QString path = pathFor(QStringLiteral("hingepin-log.txt"));
  const Expected<void> written = folder::writeFile(plain(path), app_.diagnostics()->text());
  if (!written) {
    app_.tell(written.error());
    return;
  }
  done(path, true);
}

void Exporter::dispute(const QString& unit, const QString& attachment, const QString& day) {
  const std::optional<std::int64_t> moment = session::readUtc(plain(day.trimmed()) + "T23:59:59Z");
  if (!moment) return;
  const QString path = pathFor(QStringLiteral("dispute-%1-%2").arg(unit, day.trimmed()));
  app_.backend().ask(
      this,
      [unit = plain(unit), attachment = plain(attachment), utc_ms = *moment,
       path = plain(path)](Desk& desk) -> Expected<std::string> {
        const auto dispute = session::disputeOf(desk.folder->store, unit, attachment, utc_ms);
        if (!dispute) return std::unexpected(dispute.error());
        if (const auto written = folder::writeDisputeBundle(path, desk.folder->store, *dispute); !written)
          return std::unexpected(written.error());
        return path;
      },
      [this, path](const Expected<std::string>& made) {
        if (!made) {
          app_.tell(made.error());
          return;
        }
        done(path, true);
      });
}

void Exporter::certificate(const QString& record, const QString& kind, const QVariantMap& stated) {
  const bool is_page = kind != QLatin1String("dcc");
  const QString path = pathFor(
      QStringLiteral("certificate-%1.%2").arg(record.left(12), is_page ? kind : QStringLiteral("xml")));
  const QPageSize page(letter_ ? QPageSize::Letter : QPageSize::A4);
  session::Reader reader = app_.reader();
  const auto text = [&](const char* key) {
    return plain(stated.value(QLatin1String(key)).toString().trimmed());
  };
  if (const std::string language = text("language"); !language.empty()) reader.language = language;
  const session::Issue issue{.particulars = {.laboratory = text("laboratory"),
                                             .customer = text("customer"),
                                             .place = text("place"),
                                             .country = text("country"),
                                             .references = text("references")},
                             .program = "hingepin " HINGEPIN_VERSION,
                             .utc_ms = app_.backend().now().utc_ms};
  const bool right_to_left = session::localeOf(reader.language).right_to_left;
  app_.backend().ask(
      this,
      [record = plain(record), reader, issue, is_page](Desk& desk) {
        const store::Store& store = desk.folder->store;
        return is_page ? session::certificateHtml(store, folder::edge(), record, reader, issue)
                       : session::certificateDcc(store, folder::edge(), record, reader, issue);
      },
      [this, path, page, right_to_left,
       is_pdf = kind == QLatin1String("pdf")](const Expected<std::string>& made) {
        if (!made) {
          app_.tell(made.error());
          return;
        }
        if (is_pdf) {
          done(path, writePdf(path, qt(*made), {}, page, right_to_left));
          return;
        }
        const Expected<void> written = folder::writeFile(plain(path), *made);
        if (!written) {
          app_.tell(written.error());
          return;
        }
        done(path, true);
      });
}

void Exporter::label(const QString& unit, const QString& attachment) {
  const QString path = pathFor(QStringLiteral("label-%1.pdf").arg(unit));
  app_.backend().ask(
      this,
      [unit = plain(unit), attachment = plain(attachment), reader = app_.reader()](Desk& desk) {
        return session::labelOf(desk.folder->store, unit, attachment, reader);
      },
      [this, path](const Expected<session::ScaleLabel>& label) {
        if (!label) {
          app_.tell(label.error());
          return;
        }
        const QString html =
            QStringLiteral("<html><body style='font-size:8pt'><b>%1</b>%2<img src='qr'/></body></html>")
                .arg(escaped(label->title), tableOf(label->rows));
        // A sticker of 100 mm by 148 mm (A6) fits every printer.
        done(path,
             writePdf(path, html, qrImage(label->qr_text, 3), QPageSize(QPageSize::A6), app_.rightToLeft()));
      });
}

void Exporter::tag(const QString& record) {
  const QString path = pathFor(QStringLiteral("tag-%1.pdf").arg(record.left(12)));
  const QPageSize page(letter_ ? QPageSize::Letter : QPageSize::A4);
  app_.backend().ask(
      this,
      [record = plain(record), reader = app_.reader()](Desk& desk) {
        return session::tagDocumentOf(desk.folder->store, record, reader);
      },
      [this, path, page](const Expected<session::TagDocument>& tag) {
        if (!tag) {
          app_.tell(tag.error());
          return;
        }
        const QString html =
            QStringLiteral("<html><body><h1 style='font-size:40pt'>✖ %1</h1>%2<img src='qr'/></body></html>")
                .arg(escaped(tag->headline), tableOf(tag->rows));
        done(path, writePdf(path, html, qrImage(tag->qr_text, 5), page, app_.rightToLeft()));
      });
}

void Exporter::tagOfLines(const QStringList& lines, const QString& name) {
  const QString path = pathFor(QStringLiteral("tag-%1.pdf").arg(name));
  QString html = QStringLiteral("<html><body>");
  for (qsizetype index = 0; index < lines.size(); ++index) {
    html += index == 0
                ? QStringLiteral("<h1 style='font-size:40pt'>✖ %1</h1>").arg(lines[index].toHtmlEscaped())
                : QStringLiteral("<p style='font-size:16pt'>%1</p>").arg(lines[index].toHtmlEscaped());
  }
  done(path, writePdf(path, html + QStringLiteral("</body></html>"), {},
                      QPageSize(letter_ ? QPageSize::Letter : QPageSize::A4), app_.rightToLeft()));
}

}  // namespace hingepin::mobile
