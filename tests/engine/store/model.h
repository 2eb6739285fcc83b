// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <variant>
#include <vector>

#include "engine/base/random.h"
#include "engine/store/store.h"

/// What a store should do, in memory and as simple as can be, and random things to do with both.
namespace hingepin::store {

struct PutBlob {
  std::string bytes;
};
struct BeginJob {
  Job job;
  std::string event;
};
struct AppendEvent {
  std::string job;
  std::int64_t sequence;
  std::string event;
};
struct PutStatement {
  StoredStatement statement;
  std::int64_t now_utc_ms;
  bool queue;
};
struct PutSigners {
  records::SealedSigners list;
  std::int64_t now_utc_ms;
};
struct AcceptRoot {
  std::string name;
};
struct PutPersonal {
  Personal personal;
  std::int64_t now_utc_ms;
};
struct ErasePersonal {
  std::string name;
  std::int64_t now_utc_ms;
};
using Operation = std::variant<Unit, Attachment, Pair, PutBlob, BeginJob, AppendEvent, Ending, PutStatement,
                               PutSigners, AcceptRoot, records::Head, PutPersonal, ErasePersonal, Waiting>;

/// Facts as text, by name: what a store tells through all of its questions.
using Facts = std::map<std::string, std::string>;

struct Model {
  std::map<std::string, std::string> units{};
  std::map<std::string, std::string> attachments{};
  std::map<std::pair<std::string, std::string>, Pair> pairs{};
  std::map<std::string, std::string> blobs{};
  std::vector<Job> jobs{};
  std::map<std::string, std::vector<std::string>> journals{};
  std::vector<StoredStatement> statements{};
  std::vector<records::SealedSigners> signers{};
  std::vector<std::string> roots{};
  std::vector<records::Head> heads{};
  std::vector<Personal> personal{};
  std::vector<Waiting> waiting{};

  /// @return the code of the refusal, or ""
  std::string apply(const Operation& operation);
  [[nodiscard]] Facts facts() const;
};

/// @return the error, or "" . `kind` is set when it failed.
struct Applied {
  std::string code{};
  ErrorKind kind = ErrorKind::InvalidInput;
};
Applied apply(Store& store, const Operation& operation);

/// @param blobs whose being there is asked for, by hash
[[nodiscard]] Expected<Facts> factsOf(const Store& store, const std::vector<std::string>& blobs);

/// Draws things to do; some are refused by a sound store.
class Chance {
 public:
  explicit Chance(std::uint64_t seed);
  [[nodiscard]] Operation next(const Model& model);
  /// A unit, an attachment and what a job needs, so that jobs begin soon.
  [[nodiscard]] std::vector<Operation> beginning() const;
  /// Whatever blobs it ever put into an operation, by hash.
  [[nodiscard]] const std::vector<std::string>& blobs() const { return blobs_; }
  [[nodiscard]] Random& random() { return random_; }
  double most_event_bytes = 700;
  double most_blob_bytes = 9000;

 private:
  std::size_t below(std::size_t count) { return static_cast<std::size_t>(random_.bits() % count); }
  bool often(double share) { return random_.uniform() < share; }
  std::string letters(double most);
  std::string fresh(const char* what) { return what + std::to_string(++number_); }
  PutBlob blob();
  StoredStatement statement(const Model& model, const std::string& job);

  Random random_;
  std::uint64_t seed_;
  std::int64_t number_ = 0;
  std::int64_t now_utc_ms_;
  std::vector<std::string> blobs_{};
};

}  // namespace hingepin::store
