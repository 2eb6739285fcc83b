// SPDX-License-Identifier: Apache-2.0
#include "engine/formats/lift_log_csv.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "tests/engine/formats/samples.h"

namespace hingepin::formats {
namespace {

using calibration::LiftLog;
using calibration::LiftLogBuilder;
using calibration::LiftRow;
using calibration::LogLine;
using calibration::SensorUnit;

const std::string kHeader = "time [s],boom_sensor [V],head_pressure [bar]\n";

Expected<LiftLog> readLog(const std::string& text, std::size_t chunk = 65536) {
  return readLiftLog(sourceOf(text, chunk), "lift.csv");
}

/// "code line:column" of the error, or "".
std::string faultOfLog(const std::string& text) {
  const Expected<LiftLog> log = readLog(text);
  if (log) return "";
  EXPECT_EQ(log.error().kind, ErrorKind::InvalidInput);
  EXPECT_EQ(log.error().place.file, "lift.csv");
  return fmt::format("{} {}:{}", log.error().message.code, log.error().place.line, log.error().place.column);
}

TEST(LiftLogCsvTest, ReadsTheColumnsOfTheExampleIntoSiUnits) {
  const Expected<LiftLog> log = readLog(kSampleLog);
  ASSERT_TRUE(log);
  EXPECT_EQ(log->name, "lift.csv");
  EXPECT_EQ(log->rows_read, 4U);
  EXPECT_EQ(log->rows_dropped, 1U);
  ASSERT_EQ(log->rows.size(), 3U);
  EXPECT_TRUE(log->has_rod_pressure);
  EXPECT_TRUE(log->unknown_columns.empty());
  const LiftRow& row = log->rows[0];
  EXPECT_EQ(row.time_s, 0.0);
  EXPECT_EQ(row.boom_sensor, 1.10);
  EXPECT_EQ(row.bucket_sensor, 2.7);
  EXPECT_EQ(row.head_pressure_Pa, 85.5e5);
  EXPECT_EQ(row.rod_pressure_Pa, 4.1 * 1e5);
  EXPECT_EQ(row.engine_speed_per_s, 15.0);
  EXPECT_EQ(row.oil_temperature_K, 325.15);
  EXPECT_FALSE(row.pitch_rad);
  EXPECT_FALSE(log->rows[2].rod_pressure_Pa);
  EXPECT_FALSE(log->rows[2].engine_speed_per_s);
}

TEST(LiftLogCsvTest, TakesEachUnitOfTheContract) {
  const auto first = [](const std::string& columns, const std::string& values) {
    const Expected<LiftLog> log = readLog(columns + "\n" + values);
    EXPECT_TRUE(log) << columns;
    return log ? log->rows.at(0) : LiftRow{};
  };
  EXPECT_EQ(first("time [ms],boom_sensor [mV],head_pressure [kPa]", "20,1100,8550").time_s, 0.02);
  EXPECT_EQ(first("time [ms],boom_sensor [mV],head_pressure [kPa]", "20,1100,8550").boom_sensor, 1.1);
  EXPECT_EQ(first("time [s],boom_sensor [1],head_pressure [MPa]", "0,2048,8.5").head_pressure_Pa, 8.5e6);
  EXPECT_DOUBLE_EQ(first("time [s],boom_sensor [1],head_pressure [[psi]]", "0,2048,1000").head_pressure_Pa,
                   6894757.293168361);
  EXPECT_DOUBLE_EQ(first("time [s],boom_sensor [1],head_pressure [psi]", "0,2048,1000").head_pressure_Pa,
                   6894757.293168361);
  const std::string others = "time [s],boom_sensor [deg],head_pressure [bar],pitch [deg],oil_temperature ";
  EXPECT_DOUBLE_EQ(*first(others + "[degF]", "0,180,1,2,104").oil_temperature_K, 313.15);
  EXPECT_DOUBLE_EQ(*first(others + "[[degF]]", "0,180,1,2,104").oil_temperature_K, 313.15);
  EXPECT_EQ(*first(others + "[K]", "0,180,1,2,300").oil_temperature_K, 300.0);
  EXPECT_DOUBLE_EQ(first(others + "[K]", "0,180,1,2,300").boom_sensor, 3.141592653589793);
  EXPECT_DOUBLE_EQ(*first(others + "[K]", "0,180,1,90,300").pitch_rad, 1.5707963267948966);
}

TEST(LiftLogCsvTest, KnowsWhatTheSensorsReportIn) {
  EXPECT_EQ(readLog("time [s],boom_sensor [mV],head_pressure [bar],bucket_sensor [1]\n")->boom_sensor_unit,
            SensorUnit::Volt);
  EXPECT_EQ(readLog("time [s],boom_sensor [mV],head_pressure [bar],bucket_sensor [1]\n")->bucket_sensor_unit,
            SensorUnit::Count);
  EXPECT_EQ(readLog("time [s],boom_sensor [rad],head_pressure [bar]\n")->boom_sensor_unit,
            SensorUnit::Radian);
  EXPECT_FALSE(readLog("time [s],boom_sensor [rad],head_pressure [bar]\n")->bucket_sensor_unit);
}

TEST(LiftLogCsvTest, ByteOrderMarkCrlfQuotesOrderAndMissingLastLineEndAreFine) {
  const std::string text =
      "\xEF\xBB\xBF\"head_pressure [bar]\",note,\"boom_sensor [V]\",time [s]\r\n"
      "85,\"a \"\"b\"\", c\r\nd\",1.1,0\r\n"
      "86,,\"1.2\",\"0.02\"";
  const Expected<LiftLog> whole = readLog(text);
  ASSERT_TRUE(whole) << whole.error().message.code;
  ASSERT_EQ(whole->rows.size(), 2U);
  EXPECT_EQ(whole->rows[1].boom_sensor, 1.2);
  EXPECT_EQ(whole->unknown_columns, std::vector<std::string>{"note"});
  for (std::size_t chunk = 1; chunk < 20; ++chunk) {
    const Expected<LiftLog> pieces = readLog(text, chunk);
    ASSERT_TRUE(pieces);
    EXPECT_EQ(pieces->rows.size(), 2U);
    EXPECT_EQ(pieces->rows[1].time_s, 0.02);
  }
}

TEST(LiftLogCsvTest, ALogWithoutOnePressureIsWellFormedAndEmpty) {
  const Expected<LiftLog> log = readLog(kHeader + "0,1,\n0.1,1,\n0.2,1,\n");
  ASSERT_TRUE(log);
  EXPECT_TRUE(log->rows.empty());
  EXPECT_EQ(log->rows_dropped, 3U);
  EXPECT_TRUE(readLog(kHeader)->rows.empty());
}

TEST(LiftLogCsvTest, FaultsNameTheirPlace) {
  const std::vector<std::pair<std::string, std::string>> cases = {
      {"", "csv-empty 1:0"},
      {"\xEF\xBB\xBF", "csv-empty 1:0"},
      {"0,1,85\n0.02,1,86\n", "csv-no-header 1:1"},
      {"\n" + kHeader, "csv-no-header 1:1"},
      {"time [s];boom_sensor [V];head_pressure [bar]\n", "csv-column-malformed 1:1"},
      {"time [s],boom_sensor [V]\n", "csv-missing-column 1:1"},
      {"time [s],head_pressure [bar]\n", "csv-missing-column 1:1"},
      {"boom_sensor [V],head_pressure [bar]\n", "csv-missing-column 1:1"},
      {"time [s],boom_sensor [V],head_pressure [bar],time [s]\n", "csv-duplicate-column 1:46"},
      {"time [s],boom_sensor [V],head_pressure [V]\n", "csv-wrong-unit 1:26"},
      {"time [min],boom_sensor [V],head_pressure [bar]\n", "csv-wrong-unit 1:1"},
      {"time [s],boom_sensor [volt],head_pressure [bar]\n", "csv-wrong-unit 1:10"},
      {"time,boom_sensor [V],head_pressure [bar]\n", "csv-column-malformed 1:1"},
      {"time[s],boom_sensor [V],head_pressure [bar]\n", "csv-column-malformed 1:1"},
      {"time [s] ,boom_sensor [V],head_pressure [bar]\n", "csv-column-malformed 1:1"},
      {"time [],boom_sensor [V],head_pressure [bar]\n", "csv-column-malformed 1:1"},
      {"time [s],boom_sensor [V],head_pressure [bar],\xFF\n", "not-utf8 1:46"},
      {"\xFF\xFEt\0i\0", "not-utf8 1:1"},
      {kHeader + "0,1,NaN\n", "csv-not-a-number 2:5"},
      {kHeader + "0,inf,1\n", "csv-not-a-number 2:3"},
      {kHeader + "0,1,85\n0.1,-Infinity,1\n", "csv-not-a-number 3:5"},
      {kHeader + "0,1,error\n", "csv-not-a-number 2:5"},
      {kHeader + "0,1, 85\n", "csv-not-a-number 2:5"},
      {kHeader + "0,1,85 \n", "csv-not-a-number 2:5"},
      {kHeader + "0,1,85 bar\n", "csv-not-a-number 2:5"},
      {kHeader + "0,1,1.2.3\n", "csv-not-a-number 2:5"},
      {kHeader + "0,1,0x10\n", "csv-not-a-number 2:5"},
      {kHeader + "0,1,+1\n", "csv-not-a-number 2:5"},
      {kHeader + "0,1,-\n", "csv-not-a-number 2:5"},
      {kHeader + "0,1,1e999\n", "csv-value-out-of-range 2:5"},
      {kHeader + "0,1,1e300\n", "csv-value-out-of-range 2:5"},
      {kHeader + "0,1,\"85,5\"\n", "csv-decimal-comma 2:5"},
      {kHeader + "0,1,85,5\n", "csv-ragged-row 2:1"},
      {kHeader + "0,1\n", "csv-ragged-row 2:1"},
      {kHeader + "0,1,85,\n", "csv-ragged-row 2:1"},
      {kHeader + "0,1,\"85\",2\n", "csv-ragged-row 2:1"},
      {kHeader + "0,1,85\n\n0.1,1,85\n", "csv-blank-line 3:1"},
      {kHeader + "0,1,\"85\n0.1,1,86\n", "csv-quote-open 2:0"},
      {kHeader + "0,1,8\"5\n", "csv-quote-misplaced 2:6"},
      {kHeader + "0,1,\"85\"0\n", "csv-quote-misplaced 2:9"},
      {kHeader + "0,1,85\n0,1,85\n", "csv-time-not-increasing 3:1"},
      {kHeader + "0.2,1,85\n0.1,1,85\n", "csv-time-not-increasing 3:1"},
      {kHeader + "0.2,1,\n0.1,1,85\n", "csv-time-not-increasing 3:1"},
      {kHeader + "0,1,85\n" + std::string(70000, '1'), "csv-line-too-long 3:0"},
      {std::string(200000, 'x'), "csv-line-too-long 1:0"},
      {kHeader + std::string("0,1,8\0005\n", 8), "csv-not-a-number 2:5"},
      {kHeader + "0,1,85\r0.1,1,85\r", "csv-not-a-number 2:5"},
      {"time [s],boom_sensor [V],head_pressure [bar],oil_temperature [Cel]\n0,1,1,-274\n",
       "csv-value-out-of-range 2:7"},
      {"time [s],boom_sensor [V],head_pressure [bar],\"a\nb\"\n0,1,x,\n", "csv-not-a-number 3:5"},
  };
  for (const auto& [text, fault] : cases) EXPECT_EQ(faultOfLog(text), fault) << text.substr(0, 200);
}

TEST(LiftLogCsvTest, BlankLinesAtTheEndAreFine) {
  EXPECT_EQ(readLog(kHeader + "0,1,85\n\r\n\n")->rows.size(), 1U);
}

TEST(LiftLogCsvTest, AFaultOfTheSourceIsPassedOn) {
  const Expected<LiftLog> log = readLiftLog(
      [](std::span<char>) -> Expected<std::size_t> { return fail(ErrorKind::IoFailed, "file-read-failed"); },
      "x.csv");
  ASSERT_FALSE(log);
  EXPECT_EQ(log.error().kind, ErrorKind::IoFailed);
}

// A measured record of a loader's lift-cylinder pressures; see its own header for the source.
TEST(LiftLogCsvTest, CopesWithAMeasuredPressureRecord) {
  const std::filesystem::path path =
      std::filesystem::path(HINGEPIN_SOURCE_DIR) / "../shared/reference/methods/lift_pressure_trace.csv";
  if (!std::filesystem::exists(path))
    GTEST_SKIP() << "missing: ../shared/reference/methods/lift_pressure_trace.csv";
  std::ifstream file(path);
  std::string text = "time [s],head_pressure [bar],rod_pressure [bar],boom_sensor [V]\n";
  std::size_t lines = 0;
  for (std::string line; std::getline(file, line);) {
    if (line.starts_with('#') || line.starts_with("time")) continue;
    text += line + ",1\n";  // the record has no angle
    ++lines;
  }
  const Expected<LiftLog> log = readLog(text, 777);
  ASSERT_TRUE(log) << log.error().message.code << " line " << log.error().place.line;
  EXPECT_EQ(log->rows.size(), lines);
  EXPECT_GT(lines, 9000U);
}

LiftRow rowAt(double time_s) {
  LiftRow row;
  row.time_s = time_s;
  row.head_pressure_Pa = 2.0 * time_s;
  return row;
}

/// What a feed told: 'h' for a header, 'r' for a row, '-' for a row without a required reading, else the code
/// of the fault with its line.
std::vector<std::string> told(LiftLogLines& lines, std::string_view text, std::size_t piece) {
  std::vector<std::string> list;
  while (!text.empty()) {
    lines.take(text.substr(0, piece), [&](const Expected<LogLine>& line, const LiftLog&) {
      if (!line) {
        list.push_back(fmt::format("{} {}", line.error().message.code, line.error().place.line));
      } else if (line->is_header) {
        list.emplace_back("h");
      } else {
        list.emplace_back(line->row ? "r" : "-");
      }
    });
    text.remove_prefix(std::min(piece, text.size()));
  }
  return list;
}

std::vector<std::string> told(std::string_view text, std::size_t piece = 7) {
  LiftLogLines lines("feed", LogOrigin::Feed);
  return told(lines, text, piece);
}

TEST(LiftLogLinesTest, PiecesOfAnySizeGiveTheRowsOfTheWholeLog) {
  const Expected<LiftLog> whole = readLog(kSampleLog);
  ASSERT_TRUE(whole);
  for (std::size_t piece = 1; piece < 60; ++piece) {
    LiftLogLines lines("feed", LogOrigin::Feed);
    std::vector<LiftRow> rows;
    std::string text = kSampleLog;
    if (!text.ends_with('\n')) text += '\n';
    for (std::string_view rest = text; !rest.empty(); rest.remove_prefix(std::min(piece, rest.size()))) {
      lines.take(rest.substr(0, piece), [&](const Expected<LogLine>& line, const LiftLog&) {
        ASSERT_TRUE(line);
        if (line->row) rows.push_back(*line->row);
      });
    }
    ASSERT_EQ(rows.size(), whole->rows.size()) << piece;
    for (std::size_t index = 0; index < rows.size(); ++index) {
      EXPECT_EQ(rows[index].time_s, whole->rows[index].time_s);
      EXPECT_EQ(rows[index].head_pressure_Pa, whole->rows[index].head_pressure_Pa);
      EXPECT_EQ(rows[index].oil_temperature_K, whole->rows[index].oil_temperature_K);
    }
    EXPECT_EQ(lines.log().rows_dropped, whole->rows_dropped);
  }
}

TEST(LiftLogLinesTest, ALineIsToldOnceItIsWhole) {
  LiftLogLines lines("feed", LogOrigin::Feed);
  EXPECT_EQ(told(lines, kHeader + "0,1,10", 5), std::vector<std::string>{"h"});
  EXPECT_EQ(told(lines, "\r", 5), std::vector<std::string>{});
  EXPECT_EQ(told(lines, "\n", 5), std::vector<std::string>{"r"});
}

TEST(LiftLogLinesTest, AFaultyLineIsSaidAndPassedOver) {
  const std::vector<std::string> expected{"h", "r", "csv-not-a-number 3", "csv-ragged-row 4", "-", "r"};
  EXPECT_EQ(told(kHeader + "0,1,10\n1,x,10\n2,1\n3,,10\n4,1,10\n"), expected);
  // Blank lines and times that go back are the business of who watches.
  EXPECT_EQ(told(kHeader + "5,1,10\n\n4,1,10\n"), (std::vector<std::string>{"h", "r", "r"}));
}

TEST(LiftLogLinesTest, AHeaderInTheMiddleBeginsAnewWithItsOwnColumns) {
  LiftLogLines lines("feed", LogOrigin::Feed);
  std::vector<double> pressures;
  std::vector<SensorUnit> units;
  const std::string text =
      kHeader + "0,1,10\n" + "head_pressure [kPa],boom_sensor [deg],time [ms]\n" + "500,3,20\n";
  lines.take(text, [&](const Expected<LogLine>& line, const LiftLog& log) {
    ASSERT_TRUE(line);
    units.push_back(log.boom_sensor_unit);
    if (line->row) pressures.push_back(line->row->head_pressure_Pa);
  });
  EXPECT_EQ(pressures, (std::vector<double>{10e5, 5e5}));
  EXPECT_EQ(units, (std::vector{SensorUnit::Volt, SensorUnit::Volt, SensorUnit::Radian, SensorUnit::Radian}));
  // Rows after a header that can't be read are not read with the columns of the one before.
  EXPECT_EQ(
      told(kHeader + "0,1,10\ntime [s],boom_sensor [V],head_pressure [atm]\n1,1,10\n" + kHeader + "2,1,10\n"),
      (std::vector<std::string>{"h", "r", "csv-wrong-unit 3", "csv-no-header 4", "h", "r"}));
}

TEST(LiftLogLinesTest, ALineWithoutEndIsBoundedAndSaidOnce) {
  const std::string endless(300'000, '1');
  EXPECT_EQ(told(kHeader + endless + "\n1,1,10\n", 1000),
            (std::vector<std::string>{"h", "csv-line-too-long 2", "r"}));
  EXPECT_EQ(told(kHeader + std::string(kMostLogLineBytes + 10, '1') + "\n1,1,10\n", 200'000),
            (std::vector<std::string>{"h", "csv-line-too-long 2", "r"}));
}

TEST(LiftLogLinesTest, AnOpenQuoteSwallowsNoOtherLineOfAFeed) {
  const std::string header = "time [s],boom_sensor [V],head_pressure [bar],note\n";
  EXPECT_EQ(told(header + "0,1,10,\"a, b\"\n1,1,10,\"c\n2,1,10,d\n"),
            (std::vector<std::string>{"h", "r", "csv-quote-open 3", "r"}));
}

TEST(LiftLogBuilderTest, KeepsShortLogsAsTheyAre) {
  LiftLogBuilder builder;
  for (std::size_t row = 0; row < LiftLogBuilder::kMostRows; ++row)
    builder.add(rowAt(static_cast<double>(row)));
  EXPECT_EQ(builder.take().size(), LiftLogBuilder::kMostRows);
}

TEST(LiftLogBuilderTest, AveragesLongLogsInBoundedMemory) {
  LiftLogBuilder builder;
  const std::size_t count = 5 * LiftLogBuilder::kMostRows + 3;
  for (std::size_t index = 0; index < count; ++index) {
    LiftRow row = rowAt(static_cast<double>(index));
    if (index % 2 == 0) row.pitch_rad = 0.25;
    builder.add(row);
  }
  const std::vector<LiftRow> rows = builder.take();
  ASSERT_EQ(rows.size(), (count + 7) / 8);
  for (std::size_t index = 0; index + 1 < rows.size(); ++index) {
    ASSERT_DOUBLE_EQ(rows[index].time_s, 8.0 * static_cast<double>(index) + 3.5);
    ASSERT_DOUBLE_EQ(rows[index].head_pressure_Pa, 2.0 * rows[index].time_s);
    ASSERT_EQ(rows[index].pitch_rad, 0.25);
    ASSERT_FALSE(rows[index].rod_pressure_Pa);
  }
  EXPECT_DOUBLE_EQ(rows.back().time_s, static_cast<double>(count - 2));
  EXPECT_TRUE(builder.take().empty());
}

}  // namespace
}  // namespace hingepin::formats
