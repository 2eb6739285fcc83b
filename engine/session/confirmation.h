// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/error.h"
#include "engine/procedures/runner.h"
#include "engine/records/keys.h"
#include "engine/records/signers.h"
#include "engine/session/job.h"
#include "engine/session/job_record.h"
#include "engine/session/locale.h"
#include "engine/session/moment.h"
#include "engine/session/record_view.h"
#include "engine/store/store.h"

/// A second person confirms a step on a phone of their own, with no network: what is asked and what is
/// answered are two texts, each small enough for a QR code from screen to camera. README.md has the format.
namespace hingepin::session {

/// How long an answer is taken, from when it was asked for: to walk round the machine and look (common
/// practice, no source).
inline constexpr std::int64_t kAskHolds_ms = 15LL * 60 * 1000;

/// What a second person is asked.
struct Asked {
  std::string job{};
  std::string unit{};
  std::string attachment{};
  std::string procedure{};                                  ///< hash name of its file
  std::string step{};                                       ///< id
  std::string text{};                                       ///< of the step, as the asking phone shows it
  std::vector<std::string> roles{};                         ///< one of which may answer
  std::vector<std::pair<std::string, std::string>> seen{};  ///< steps just before, and what was said there
  std::string by{};                                         ///< key of who is in charge
  std::string device{};                                     ///< the phone that asks
  std::string journal{};                                    ///< journalHead() of the job
  std::string nonce{};                                      ///< 16 random bytes in base64url
  std::int64_t at_ms = 0;                                   ///< of the asking phone's monotonic clock
  std::int64_t utc_ms = 0;                                  ///< by its other clock
};

/// What a second person sealed: the question with the answer to it.
struct Confirmed {
  Asked asked{};
  std::string answer{};     ///< "yes", "no"
  std::string key{};        ///< by which it says it is sealed
  std::string role{};       ///< that the key answers in
  std::string device{};     ///< the phone that it was answered on
  std::int64_t utc_ms = 0;  ///< by that phone's clock
};

/// SHA-256 of all events of a journal, hexadecimal: what an answer holds for.
[[nodiscard]] std::string journalHead(const std::vector<procedures::Event>& journal);

/// The code by which a job asks for what it waits for.
/// @param device this phone
/// Errors: InvalidInput "confirmation-not-asked": the job does not wait for a second person.
[[nodiscard]] Expected<std::string> askToConfirm(const OpenJob& job, const std::string& device,
                                                 const Moment& now, const records::FillBytes& fill);

/// Errors: InvalidInput "ask-code-malformed"; those of the members, with the JSON Pointer.
[[nodiscard]] Expected<Asked> readAsk(std::string_view code);

/// What is asked, for whoever looks and answers.
struct AskedInWords {
  std::string title{};  ///< of the procedure; "" where this phone does not know it
  std::string text{};   ///< the reader's language where this phone knows the procedure, else as it came
  std::vector<std::pair<std::string, std::string>> seen{};
};
[[nodiscard]] AskedInWords sayAsk(const store::Store& store, const Asked& asked, const Reader& reader);

/// Answers on this phone, with the key of whoever looked.
/// @param answer "yes" or "no"
/// @return the code for the phone that asked
/// Errors: those of readAsk; InvalidInput "answer-unknown", "second-person-is-the-first",
/// "confirmation-same-phone", "role-may-not".
[[nodiscard]] Expected<std::string> answerAsk(std::string_view ask_code, std::string_view answer,
                                              const Sealer& sealer, const Moment& now);

/// On the phone that asked: the event that an answer is, for handIn(), which checks who sealed it.
/// @param ask_code what askToConfirm() gave
/// Errors: those of readAsk; InvalidInput "answer-code-malformed", "confirmation-of-another-ask", those of
/// the members.
[[nodiscard]] Expected<procedures::Event> eventOfAnswer(std::string_view ask_code,
                                                        std::string_view answer_code);

/// Errors: those of readSealed and readCanonicalJson; InvalidInput "seal-header-unexpected", those of the
/// members.
[[nodiscard]] Expected<Confirmed> readConfirmation(std::string_view sealed);

/// Whether the seal of a confirmation is that of a key of the list. Roles and dates are not looked at.
[[nodiscard]] bool confirmationHolds(std::string_view sealed, const records::SignersList& signers);

/// Whether what a record says of a second person is what they sealed on their own phone, with a key that the
/// list has for their role: this job and step, this answer, key, role and phone. Dates are not looked at.
[[nodiscard]] bool confirmationProves(const RecordedJob& job, const RecordedTry& made,
                                      const records::SignersList& signers);

/// Whether an event's confirmation answers what this job waits for now, sealed by the event's author on
/// another phone. Part of handIn().
/// Errors: those of readConfirmation; InvalidInput "confirmation-not-of-author" (key, role, phone or answer
/// are not the event's), "confirmation-used", "confirmation-of-another-ask" (another job, step or moment),
/// "confirmation-too-late", "confirmation-same-phone", "confirmation-altered"; those of signersOf.
[[nodiscard]] Expected<void> checkConfirmation(const store::Store& store, const OpenJob& job,
                                               const procedures::Event& event, const Moment& now);

}  // namespace hingepin::session
