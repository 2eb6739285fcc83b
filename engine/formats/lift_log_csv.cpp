// SPDX-License-Identifier: Apache-2.0
#include "engine/formats/lift_log_csv.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <limits>
#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "engine/base/text.h"
#include "engine/units/number.h"
#include "engine/units/ucum.h"

namespace hingepin::formats {
namespace {

using calibration::LiftLog;
using calibration::LiftRow;
using calibration::LogLine;
using calibration::SensorUnit;

enum Field : std::size_t {
  kTime,
  kBoomSensor,
  kHeadPressure,
  kLastRequired = kHeadPressure,
  kRodPressure,
  kBucketSensor,
  kEngineSpeed,
  kPitch,
  kOilTemperature,
  kFieldCount,
};

/// What may stand in a column: its name, units, and the values in SI units beyond which no reading can be
/// meant.
struct ColumnKind {
  std::string_view name;
  std::array<std::string_view, 5> units;
  double low;
  double high;
};

constexpr std::array<std::string_view, 5> kSensorUnits = {"V", "mV", "1", "deg", "rad"};
constexpr std::array<std::string_view, 5> kPressureUnits = {"bar", "kPa", "MPa", "[psi]"};
constexpr std::array<ColumnKind, kFieldCount> kColumns = {{
    {"time", {"s", "ms"}, -1e13, 1e13},
    {"boom_sensor", kSensorUnits, -1e9, 1e9},
    {"head_pressure", kPressureUnits, -1e8, 1e9},
    {"rod_pressure", kPressureUnits, -1e8, 1e9},
    {"bucket_sensor", kSensorUnits, -1e9, 1e9},
    {"engine_speed", {"/min"}, -1e3, 1e3},
    {"pitch", {"deg", "rad"}, -1.5707963267948966, 1.5707963267948966},
    {"oil_temperature", {"Cel", "[degF]", "K"}, 0.0, 1e3},
}};

/// One line of the log (more where a quoted cell holds line breaks), without its line end.
struct Record {
  std::string_view text;
  std::size_t line = 0;  ///< on which it begins
  bool may_quote = false;
};

/// Cuts bytes into records, in a buffer that does not grow.
class RecordCutter {
 public:
  RecordCutter(std::string file, LogOrigin origin)
      : file_(std::move(file)),
        origin_(origin),
        buffer_(std::make_unique_for_overwrite<char[]>(kBufferBytes)) {}

  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] bool atEnd() const { return at_end_ && begin_ == end_; }

  std::span<char> space() {
    std::memmove(buffer_.get(), buffer_.get() + begin_, end_ - begin_);
    end_ -= begin_;
    begin_ = 0;
    return {buffer_.get() + end_, kBufferBytes - end_};
  }

  void came(std::size_t count) {
    end_ += count;
    at_end_ = count == 0;
    if (first_ && (end_ >= kByteOrderMark.size() || at_end_)) {
      first_ = false;
      if (std::string_view(buffer_.get(), end_).starts_with(kByteOrderMark)) begin_ = kByteOrderMark.size();
    }
    quotes_ = std::memchr(buffer_.get(), '"', end_) != nullptr;
  }

  /// The next record, nothing where it needs more bytes or all have come; it lives until the next call.
  Expected<std::optional<Record>> next() {
    if (throwing_away_ && !throwAway()) return std::nullopt;
    const char* const begin = buffer_.get() + begin_;
    const char* const end = buffer_.get() + end_;
    bool open_quote = false;
    const char* line_end = quotes_ && origin_ == LogOrigin::File
                               ? endOfQuoted(begin, end, open_quote)
                               : static_cast<const char*>(std::memchr(begin, '\n', end_ - begin_));
    if (line_end == nullptr && at_end_) {
      if (open_quote)
        return fail(ErrorKind::InvalidInput, "csv-quote-open", {}, {.file = file_, .line = line_});
      if (begin == end) return std::nullopt;
      line_end = end;
    }
    const std::size_t length = static_cast<std::size_t>((line_end == nullptr ? end : line_end) - begin);
    if (length > kMostLogLineBytes) {
      throwing_away_ = true;
      return fail(ErrorKind::InvalidInput, open_quote ? "csv-quote-open" : "csv-line-too-long",
                  {{"most", Amount{static_cast<double>(kMostLogLineBytes), "1", 0}}},
                  {.file = file_, .line = line_});
    }
    if (line_end == nullptr) return std::nullopt;
    Record record{{begin, length}, line_, quotes_};
    line_ += 1 + (quotes_ ? static_cast<std::size_t>(std::ranges::count(record.text, '\n')) : 0);
    begin_ = std::min(begin_ + length + 1, end_);
    if (record.text.ends_with('\r')) record.text.remove_suffix(1);
    if (quotes_ && origin_ == LogOrigin::Feed) {
      // The quote would swallow the lines after it in a log that is made of these.
      static_cast<void>(endOfQuoted(record.text.data(), record.text.data() + record.text.size(), open_quote));
      if (open_quote)
        return fail(ErrorKind::InvalidInput, "csv-quote-open", {}, {.file = file_, .line = record.line});
    }
    return record;
  }

 private:
  static constexpr std::size_t kBufferBytes = 2 * kMostLogLineBytes;

  /// Passes over the rest of a line that was too long. @return whether its end has come
  bool throwAway() {
    const char* const begin = buffer_.get() + begin_;
    const auto* const line_end = static_cast<const char*>(std::memchr(begin, '\n', end_ - begin_));
    begin_ = line_end == nullptr ? end_ : begin_ + static_cast<std::size_t>(line_end - begin) + 1;
    throwing_away_ = line_end == nullptr;
    if (!throwing_away_) ++line_;
    return !throwing_away_;
  }

  /// The line end of the record at `begin`, null if it is not in the buffer; says whether it ran out inside
  /// quotes.
  static const char* endOfQuoted(const char* begin, const char* end, bool& open_quote) {
    bool quoted = false;
    bool cell_start = true;
    for (const char* at = begin; at != end; ++at) {
      if (*at == '"' && (quoted || cell_start)) {
        quoted = !quoted;  // a doubled quote closes and opens again
        cell_start = quoted || (at + 1 != end && at[1] == '"');
        continue;
      }
      if (*at == '\n' && !quoted) return at;
      cell_start = !quoted && *at == ',';
    }
    open_quote = quoted;
    return nullptr;
  }

  std::string file_;
  LogOrigin origin_;
  std::unique_ptr<char[]> buffer_;
  std::size_t begin_ = 0;
  std::size_t end_ = 0;
  std::size_t line_ = 1;
  bool at_end_ = false;
  bool first_ = true;
  bool quotes_ = false;
  bool throwing_away_ = false;
};

struct Cell {
  std::string text;
  std::size_t offset;  ///< in its record
};

/// A reader's error at a byte of a record.
std::unexpected<Error> failAt(const std::string& file, const Record& record, std::size_t offset,
                              std::string code,
                              std::vector<std::pair<std::string, MessageValue>> values = {}) {
  const std::string_view before = record.text.substr(0, offset);
  const std::size_t line_break = before.rfind('\n');
  const std::string_view on_line =
      line_break == std::string_view::npos ? before : before.substr(line_break + 1);
  return fail(ErrorKind::InvalidInput, std::move(code), std::move(values),
              {.file = file,
               .line = record.line + static_cast<std::size_t>(std::ranges::count(before, '\n')),
               .column = 1 + countCharacters(on_line),
               .pointer = ""});
}

/// Cuts a record into cells by RFC 4180, quotes taken off.
Expected<std::vector<Cell>> cut(const std::string& file, const Record& record) {
  std::vector<Cell> cells;
  const std::string_view text = record.text;
  for (std::size_t at = 0;; ++at) {
    Cell cell{"", at};
    if (at < text.size() && text[at] == '"') {
      for (++at; at < text.size(); ++at) {
        if (text[at] == '"') {
          if (at + 1 >= text.size() || text[at + 1] != '"') break;
          ++at;
        }
        cell.text += text[at];
      }
      ++at;
    } else {
      const std::size_t end = std::min(text.find_first_of(",\"", at), text.size());
      cell.text = text.substr(at, end - at);
      at = end;
    }
    if (at < text.size() && text[at] != ',') return failAt(file, record, at, "csv-quote-misplaced");
    cells.push_back(std::move(cell));
    if (at >= text.size()) return cells;
  }
}

struct Column {
  std::optional<Field> field;  ///< none: not read
  Unit unit{"1", Dimension::Number};
};

std::string listOf(const std::array<std::string_view, 5>& units) {
  std::string list;
  for (const std::string_view unit : units) {
    if (!unit.empty()) list += (list.empty() ? "" : ", ") + std::string(unit);
  }
  return list;
}

/// The unit between the brackets of a header cell: "[bar]", "[[psi]]", and "[psi]" as well.
Expected<Unit> unitOf(const std::string& file, const Record& header, const Cell& cell,
                      const ColumnKind& kind) {
  std::string_view rest = std::string_view(cell.text).substr(kind.name.size());
  if (rest.size() < 4 || !rest.starts_with(" [") || !rest.ends_with(']') || rest.contains(';')) {
    return failAt(
        file, header, cell.offset, "csv-column-malformed",
        {{"text", excerpt(cell.text)}, {"column", std::string(kind.name)}, {"units", listOf(kind.units)}});
  }
  rest.remove_prefix(1);
  const std::string_view inner = rest.substr(1, rest.size() - 2);
  for (const std::string_view unit : kind.units) {
    if (!unit.empty() && (inner == unit || (unit.starts_with('[') && rest == unit))) return *findUnit(unit);
  }
  const std::optional<Unit> other = findUnit(inner);
  return failAt(file, header, cell.offset, "csv-wrong-unit",
                {{"column", std::string(kind.name)},
                 {"unit", excerpt(inner)},
                 {"found", other ? std::string(nameOf(other->dimension)) : "unknown"},
                 {"units", listOf(kind.units)}});
}

std::optional<SensorUnit> sensorUnitOf(const std::vector<Column>& columns, Field field) {
  const auto column = std::ranges::find(columns, std::optional(field), &Column::field);
  if (column == columns.end()) return std::nullopt;
  switch (column->unit.dimension) {
    case Dimension::Voltage:
      return SensorUnit::Volt;
    case Dimension::Angle:
      return SensorUnit::Radian;
    default:
      return SensorUnit::Count;
  }
}

Expected<std::vector<Column>> readHeader(const std::string& file, const Record& header, LiftLog& log) {
  const std::size_t bad = firstBadUtf8(header.text);
  if (bad != std::string_view::npos) return failAt(file, header, bad, "not-utf8");
  const Expected<std::vector<Cell>> cells = cut(file, header);
  if (!cells) return std::unexpected(cells.error());
  std::vector<Column> columns;
  for (const Cell& cell : *cells) {
    const std::string_view name = std::string_view(cell.text).substr(0, cell.text.find_first_of(" [;"));
    const auto* const kind = std::ranges::find(kColumns, name, &ColumnKind::name);
    Column column;
    if (kind == kColumns.end()) {
      log.unknown_columns.push_back(excerpt(cell.text));
    } else {
      column.field = static_cast<Field>(kind - kColumns.begin());
      if (std::ranges::find(columns, column.field, &Column::field) != columns.end()) {
        return failAt(file, header, cell.offset, "csv-duplicate-column", {{"column", std::string(name)}});
      }
      const Expected<Unit> unit = unitOf(file, header, cell, *kind);
      if (!unit) return std::unexpected(unit.error());
      column.unit = *unit;
    }
    columns.push_back(column);
  }
  if (log.unknown_columns.size() == columns.size()) {
    return failAt(file, header, 0, "csv-no-header", {{"text", excerpt(header.text)}});
  }
  for (std::size_t field = 0; field <= kLastRequired; ++field) {
    if (std::ranges::find(columns, std::optional(static_cast<Field>(field)), &Column::field) ==
        columns.end()) {
      return failAt(
          file, header, 0, "csv-missing-column",
          {{"column", std::string(kColumns[field].name)}, {"units", listOf(kColumns[field].units)}});
    }
  }
  log.boom_sensor_unit = *sensorUnitOf(columns, kBoomSensor);
  log.bucket_sensor_unit = sensorUnitOf(columns, kBucketSensor);
  return columns;
}

constexpr double kMissing = std::numeric_limits<double>::quiet_NaN();  // inside this file only

/// Reads data rows into values by field.
class RowReader {
 public:
  RowReader(std::string file, std::vector<Column> columns)
      : file_(std::move(file)), columns_(std::move(columns)) {}

  [[nodiscard]] double value(Field field) const { return values_[field]; }
  [[nodiscard]] std::size_t offset(Field field) const { return offsets_[field]; }
  void put(Field field, std::optional<double>& where) const {
    if (!std::isnan(values_[field])) where = values_[field];
  }

  Expected<void> read(const Record& record) {
    values_.fill(kMissing);
    if (record.may_quote && record.text.contains('"')) return readQuoted(record);
    std::size_t at = 0;
    for (std::size_t index = 0; index < columns_.size(); ++index) {
      std::string_view rest = record.text.substr(at);
      std::size_t length = 0;
      if (columns_[index].field) {
        const LeadingNumber number = leadingNumber(rest);
        length = number.length;
        if (length < rest.size() && rest[length] != ',') return failCell(record, at, index, cellAt(rest));
        if (!take(at, index, number)) return failRange(record, at, index, rest.substr(0, length));
      } else {
        length = cellAt(rest).size();
      }
      at += length;
      const bool last = index + 1 == columns_.size();
      if (last != (at == record.text.size())) return failRagged(record);
      ++at;
    }
    return {};
  }

 private:
  static std::string_view cellAt(std::string_view rest) { return rest.substr(0, rest.find(',')); }

  Expected<void> readQuoted(const Record& record) {
    const Expected<std::vector<Cell>> cells = cut(file_, record);
    if (!cells) return std::unexpected(cells.error());
    if (cells->size() != columns_.size()) return failRaggedOf(record, cells->size());
    for (std::size_t index = 0; index < columns_.size(); ++index) {
      const Cell& cell = (*cells)[index];
      if (!columns_[index].field) continue;
      const LeadingNumber number = leadingNumber(cell.text);
      if (number.length != cell.text.size()) return failCell(record, cell.offset, index, cell.text);
      if (!take(cell.offset, index, number)) return failRange(record, cell.offset, index, cell.text);
    }
    return {};
  }

  /// Takes a cell that is empty or a number, if its value can be meant.
  bool take(std::size_t offset, std::size_t index, const LeadingNumber& number) {
    if (number.length == 0) return true;
    const Column& column = columns_[index];
    const ColumnKind& kind = kColumns[*column.field];
    const double value_si = number.value ? column.unit.toSi(*number.value) : kMissing;
    values_[*column.field] = value_si;
    offsets_[*column.field] = offset;
    return value_si >= kind.low && value_si <= kind.high;
  }

  [[nodiscard]] std::unexpected<Error> failRange(const Record& record, std::size_t offset, std::size_t index,
                                                 std::string_view number) const {
    const Unit& unit = columns_[index].unit;
    const ColumnKind& kind = kColumns[*columns_[index].field];
    return failAt(file_, record, offset, "csv-value-out-of-range",
                  {{"column", std::string(kind.name)},
                   {"text", excerpt(number)},
                   {"low", Amount{unit.fromSi(kind.low), std::string(unit.ucum), 0}},
                   {"high", Amount{unit.fromSi(kind.high), std::string(unit.ucum), 0}}});
  }
  [[nodiscard]] std::unexpected<Error> failCell(const Record& record, std::size_t offset, std::size_t index,
                                                std::string_view text) const {
    if (const std::size_t bad = firstBadUtf8(text); bad != std::string_view::npos)
      return failAt(file_, record, offset, "csv-cell-not-utf8",
                    {{"column", std::string(kColumns[*columns_[index].field].name)}});
    const std::size_t comma = text.find(',');
    const bool decimal_comma = comma != std::string_view::npos && scanNumber(text) == comma;
    return failAt(file_, record, offset, decimal_comma ? "csv-decimal-comma" : "csv-not-a-number",
                  {{"column", std::string(kColumns[*columns_[index].field].name)}, {"text", excerpt(text)}});
  }
  [[nodiscard]] std::unexpected<Error> failRagged(const Record& record) const {
    return failRaggedOf(record, 1 + static_cast<std::size_t>(std::ranges::count(record.text, ',')));
  }
  [[nodiscard]] std::unexpected<Error> failRaggedOf(const Record& record, std::size_t cells) const {
    return failAt(file_, record, 0, "csv-ragged-row",
                  {{"cells", Amount{static_cast<double>(cells), "1", 0}},
                   {"expected", Amount{static_cast<double>(columns_.size()), "1", 0}}});
  }

  std::string file_;
  std::vector<Column> columns_;
  std::array<double, kFieldCount> values_{};
  std::array<std::size_t, kFieldCount> offsets_{};
};

/// Whether a line that is no row of readings names a column, as a header does.
bool namesColumn(const std::string& file, const Record& record) {
  const Expected<std::vector<Cell>> cells = cut(file, record);
  return cells && std::ranges::any_of(*cells, [](const Cell& cell) {
           const std::string_view name =
               std::string_view(cell.text).substr(0, cell.text.find_first_of(" [;"));
           return std::ranges::find(kColumns, name, &ColumnKind::name) != kColumns.end();
         });
}

}  // namespace

struct LiftLogLines::Reading {
  Reading(std::string file, LogOrigin origin_of_bytes)
      : cutter(std::move(file), origin_of_bytes), origin(origin_of_bytes) {}

  RecordCutter cutter;
  LogOrigin origin;
  std::optional<RowReader> rows{};
  LiftLog log{};
  std::optional<double> last_time_s{};
  std::optional<std::size_t> blank_line{};

  Expected<bool> header(const Record& record, LogLine& line) {
    log = LiftLog{};
    log.name = cutter.file();
    rows.reset();
    Expected<std::vector<Column>> columns = readHeader(cutter.file(), record, log);
    if (!columns) return std::unexpected(columns.error());
    rows.emplace(cutter.file(), *std::move(columns));
    line = {.text = record.text, .row = std::nullopt, .is_header = true};
    return true;
  }

  Expected<bool> row(const Record& record, LogLine& line) {
    if (Expected<void> read = rows->read(record); !read) {
      // A gateway that began anew without its connection having ended.
      if (origin == LogOrigin::Feed && namesColumn(cutter.file(), record)) return header(record, line);
      return std::unexpected(read.error());
    }
    ++log.rows_read;
    std::optional<double> time_s;
    rows->put(kTime, time_s);
    if (origin == LogOrigin::File && time_s && last_time_s && *time_s <= *last_time_s) {
      return failAt(cutter.file(), record, rows->offset(kTime), "csv-time-not-increasing",
                    {{"time", Amount{*time_s, "s", 3}}, {"previous", Amount{*last_time_s, "s", 3}}});
    }
    if (time_s) last_time_s = time_s;
    line.text = record.text;
    line.is_header = false;
    line.row.reset();
    if (!time_s || std::isnan(rows->value(kBoomSensor)) || std::isnan(rows->value(kHeadPressure))) {
      ++log.rows_dropped;
      return true;
    }
    // Field by field: a row that is put together and copied takes longer than its numbers take to read.
    LiftRow& values = line.row.emplace();
    values.time_s = *time_s;
    values.boom_sensor = rows->value(kBoomSensor);
    values.head_pressure_Pa = rows->value(kHeadPressure);
    rows->put(kRodPressure, values.rod_pressure_Pa);
    rows->put(kBucketSensor, values.bucket_sensor);
    rows->put(kEngineSpeed, values.engine_speed_per_s);
    rows->put(kPitch, values.pitch_rad);
    rows->put(kOilTemperature, values.oil_temperature_K);
    log.has_rod_pressure = log.has_rod_pressure || values.rod_pressure_Pa.has_value();
    return true;
  }
};

LiftLogLines::LiftLogLines(std::string file, LogOrigin origin)
    : reading_(std::make_unique<Reading>(std::move(file), origin)) {}
LiftLogLines::~LiftLogLines() = default;
LiftLogLines::LiftLogLines(LiftLogLines&&) noexcept = default;
LiftLogLines& LiftLogLines::operator=(LiftLogLines&&) noexcept = default;

std::span<char> LiftLogLines::space() { return reading_->cutter.space(); }
void LiftLogLines::came(std::size_t count) { reading_->cutter.came(count); }
bool LiftLogLines::atEnd() const { return reading_->cutter.atEnd(); }
const LiftLog& LiftLogLines::log() const { return reading_->log; }

Expected<bool> LiftLogLines::next(LogLine& line) {
  Reading& reading = *reading_;
  while (true) {
    const Expected<std::optional<Record>> next = reading.cutter.next();
    if (!next) return std::unexpected(next.error());
    if (!*next) return false;
    const Record& record = **next;
    const bool first = !reading.rows;
    if (record.text.empty() && (reading.origin == LogOrigin::Feed || !first)) {
      if (!reading.blank_line) reading.blank_line = record.line;
      continue;
    }
    if (reading.blank_line && reading.origin == LogOrigin::File)
      return fail(ErrorKind::InvalidInput, "csv-blank-line", {},
                  {.file = reading.cutter.file(), .line = *reading.blank_line, .column = 1});
    return first ? reading.header(record, line) : reading.row(record, line);
  }
}

void LiftLogLines::take(std::string_view bytes, const calibration::LogLineSink& each) {
  LogLine line;
  while (!bytes.empty()) {
    const std::span<char> room = space();
    const std::size_t count = std::min(room.size(), bytes.size());
    std::memcpy(room.data(), bytes.data(), count);
    bytes.remove_prefix(count);
    came(count);
    while (true) {
      const Expected<bool> whole = next(line);
      if (!whole) {
        each(std::unexpected(whole.error()), log());
      } else if (*whole) {
        each(line, log());
      } else {
        break;
      }
    }
  }
}

Expected<LiftLog> readLiftLog(const ByteSource& source, const std::string& file) {
  LiftLogLines lines(file, LogOrigin::File);
  calibration::LiftLogBuilder builder;
  LogLine line;
  bool has_header = false;
  while (true) {
    const Expected<bool> came = lines.next(line);
    if (!came) return std::unexpected(came.error());
    if (*came) {
      has_header = true;
      if (line.row) builder.add(*line.row);
      continue;
    }
    if (lines.atEnd()) break;
    const Expected<std::size_t> count = source(lines.space());
    if (!count) return std::unexpected(count.error());
    lines.came(*count);
  }
  if (!has_header) return fail(ErrorKind::InvalidInput, "csv-empty", {}, {.file = file, .line = 1});
  LiftLog log = lines.log();
  log.rows = builder.take();
  return log;
}

}  // namespace hingepin::formats
