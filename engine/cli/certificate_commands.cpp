// SPDX-License-Identifier: Apache-2.0
#include <CLI/App.hpp>
#include <memory>
#include <string>

#include "engine/cli/commands.h"
#include "engine/cli/groups.h"
#include "engine/folder/files.h"
#include "engine/folder/folder.h"
#include "engine/session/certificate.h"
#include "engine/session/document.h"
#include "engine/session/job_record.h"

namespace hingepin::cli {
namespace {

using folder::Folder;
using folder::momentOfComputer;
using folder::openFolder;
using folder::writeFile;

struct CertificateOptions {
  std::string record;
  std::string html, dcc, label, tag;  ///< files; "": none
  std::string language = "en";
  certificate::Particulars particulars;
};

Expected<std::string> labelOfRecord(const store::Store& store, const std::string& name,
                                    const session::Reader& reader) {
  const Expected<records::Record> record = session::recordOf(store, name);
  if (!record) return std::unexpected(record.error());
  return session::labelHtml(store, session::textAt(record->content, {"unit", "id"}),
                            session::textAt(record->content, {"attachment", "id"}), reader);
}

int certificateCommand(const Common& common, const CertificateOptions& options) {
  if (options.html.empty() && options.dcc.empty() && options.label.empty() && options.tag.empty()) {
    return complain({ErrorKind::InvalidInput,
                     {"command-line", {{"detail", "One of --html, --dcc, --label and --tag is expected."}}},
                     {}},
                    common.system);
  }
  const Expected<Folder> folder = openFolder(common.store);
  if (!folder) return complain(folder.error(), common.system);
  const session::Reader reader{.language = options.language, .system = common.system};
  const session::Issue issue{.particulars = options.particulars,
                             .program = "hingepin " HINGEPIN_VERSION,
                             .utc_ms = momentOfComputer().utc_ms};
  const auto write = [&](const std::string& path, const auto& make) -> Expected<void> {
    if (path.empty()) return {};
    const Expected<std::string> text = make();
    if (!text) return std::unexpected(text.error());
    return writeFile(path, *text);
  };
  const store::Store& store = folder->store;
  Expected<void> done = write(options.html, [&] {
    return session::certificateHtml(store, folder::edge(), options.record, reader, issue);
  });
  if (done) {
    done = write(options.dcc, [&] {
      return session::certificateDcc(store, folder::edge(), options.record, reader, issue);
    });
  }
  if (done) done = write(options.label, [&] { return labelOfRecord(store, options.record, reader); });
  if (done) done = write(options.tag, [&] { return session::tagHtml(store, options.record, reader); });
  return done ? kDone : complain(done.error(), common.system);
}

}  // namespace

void addCertificateCommand(CLI::App& app, const Common& common, Action& action) {
  const auto options = std::make_shared<CertificateOptions>();
  CLI::App* const command = app.add_subcommand(
      "certificate", "Write what people are handed of a record: a certificate, a label, a tag");
  command->add_option("RECORD", options->record, "Its name")->required();
  const auto file = [&](const char* name, std::string& path, const char* help) {
    command->add_option(name, path, help)->type_name("FILE");
  };
  file("--html", options->html, "The calibration certificate as a page to print (HTML)");
  file("--dcc", options->dcc, "The same as a Digital Calibration Certificate (XML, DCC schema 3.2.1)");
  file("--label", options->label, "The label of the record's machine and attachment (HTML)");
  file("--tag", options->tag, "The tag of a record that failed or was given up (HTML)");
  command->add_option("--language", options->language, "Language of the words; en if not given")
      ->type_name("TAG");
  const auto text = [&](const char* name, std::string& value, const char* help) {
    command->add_option(name, value, help)->type_name("TEXT");
  };
  text("--laboratory", options->particulars.laboratory, "Who calibrated: name and address");
  text("--customer", options->particulars.customer, "For whom: name and address");
  text("--place", options->particulars.place, "Where it was done");
  text("--references", options->particulars.references,
       "The certificates of the reference masses or of the truck scale");
  command
      ->add_option("--country", options->particulars.country,
                   "Where it was done, two capital letters (ISO 3166-1)")
      ->type_name("CODE");
  command->footer("What TEXT and CODE state is not part of the sealed record, and the certificate says so.");
  command->callback([&common, &action, options] {
    action = [&common, options] { return certificateCommand(common, *options); };
  });
}

}  // namespace hingepin::cli
