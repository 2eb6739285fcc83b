// SPDX-License-Identifier: Apache-2.0
// make_corpus FOLDER: for each fuzz target a folder of seeds, made of what tests use already, and a
// dictionary of the words that stand in them.
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>

#include "engine/calibration/calibration.h"
#include "engine/formats/calibration_json.h"
#include "engine/formats/job_json.h"
#include "tests/engine/formats/samples.h"
#include "tests/engine/procedures/technician.h"
#include "tests/fuzz/script.h"
#include "tests/fuzz/wrapped_keys.h"

namespace {

using namespace hingepin;
using Seeds = std::vector<std::string>;

/// Whole, and with all blanks gone, which leaves the mutations more to bite on.
void addJson(Seeds& seeds, const std::string& text) {
  seeds.push_back(text);
  seeds.push_back(nlohmann::ordered_json::parse(text).dump());
}

Seeds procedureSeeds() {
  Seeds seeds;
  addJson(seeds, procedures::samples::exampleText());
  addJson(seeds, procedures::samples::everythingText());
  for (const char* const folder : {"tests/engine/procedures/files", "engine/procedures/library"}) {
    const std::filesystem::path path = std::filesystem::path(HINGEPIN_SOURCE_DIR) / folder;
    if (!std::filesystem::is_directory(path)) continue;
    for (const auto& file : std::filesystem::directory_iterator(path)) {
      const std::string text =
          procedures::samples::fileText(std::filesystem::relative(file.path(), HINGEPIN_SOURCE_DIR).string());
      if (file.path().extension() == ".json" && nlohmann::json::accept(text)) addJson(seeds, text);
    }
  }
  // Each step of everything.json in a small procedure of its own.
  const auto everything = nlohmann::ordered_json::parse(procedures::samples::everythingText());
  const auto example = nlohmann::ordered_json::parse(procedures::samples::exampleText());
  for (const auto& step : everything.at("steps")) {
    auto small = example;
    small["entries"] = everything.at("entries");
    small["cautions"].insert(small["cautions"].end(), everything.at("cautions").begin(),
                             everything.at("cautions").end());
    small["steps"] = nlohmann::ordered_json::array({step});
    seeds.push_back(small.dump());
  }
  return seeds;
}

Seeds journalSeeds() {
  Seeds seeds;
  for (const procedures::Variant& variant :
       procedures::samples::procedureOf(procedures::samples::everythingText()).variants) {
    auto technician = procedures::samples::Technician::onEverything(variant.id);
    std::string text;
    std::set<std::string> done_again;
    while (!hasEnded(technician.state().phase)) {
      const std::string back = technician.asked().back_to;
      const bool first = !back.empty() && done_again.insert(back).second;
      const procedures::Event next =
          first ? technician.event(procedures::EventType::GoBack, back) : technician.honest();
      technician.now_ms = next.at_ms + technician.pace_ms;
      if (technician.tell(next) != "") break;
    }
    for (const procedures::Event& event : technician.journal()) text += writeEvent(event) + "\n";
    text += writeEvent(technician.event(procedures::EventType::Interrupt)) + "\n";
    seeds.push_back(text);
  }
  return seeds;
}

std::string chain(int key, int sequence, const std::string& previous, int epoch = 1) {
  const std::string name = "<k" + std::to_string(key) + ">";
  return R"("chain":{"epoch":"<e)" + std::to_string(epoch) + R"(>","installation":")" + name +
         R"(","key":")" + name + R"(","previous":)" + previous + R"(,"sequence":)" +
         std::to_string(sequence) + "}";
}

std::string record(int key, int sequence, const std::string& previous, const std::string& amends = "",
                   const std::string& personal = "", const std::string& role = "technician") {
  return "R" + std::to_string(key) + "{" + (amends.empty() ? "" : R"("amends":")" + amends + "\",") +
         chain(key, sequence, previous) + R"(,"content":{"note":"demo","reading_mV":)" +
         std::to_string(2431 + sequence) + R"(},"format":"hingepin-record/1")" + personal + R"(,"role":")" +
         role + R"(","sealed_utc_ms":1780000000000})";
}

std::string signature(int key, int sequence, const std::string& previous, const std::string& signed_name) {
  return "G" + std::to_string(key) + "{" + chain(key, sequence, previous) +
         R"(,"format":"hingepin-signature/1","record":")" + signed_name +
         R"(","role":"safety-lead","sealed_utc_ms":1780000000001})";
}

std::string signers(const std::string& keys, int number, const std::string& previous,
                    const std::string& revocations = "", int yard = 1) {
  const auto signer = [](int key, const std::string& role) {
    return R"({"key":"<x)" + std::to_string(key) + R"(>","role":")" + role +
           R"(","valid_from_utc_ms":1770000000000,"valid_until_utc_ms":1790000000000})";
  };
  return "L" + keys + R"({"format":"hingepin-signers/1","number":)" + std::to_string(number) +
         R"(,"previous":)" + previous + R"(,"revocations":[)" + revocations + R"(],"signers":[)" +
         signer(2, "technician") + "," + signer(3, "safety-lead") + "," + signer(4, "technician") +
         R"(],"yard_key":"<x)" + std::to_string(yard) + ">\"}";
}

std::string lines(std::initializer_list<std::string> all) {
  std::string text;
  for (const std::string& line : all) text += line + "\n";
  return text;
}

Seeds signersSeeds() {
  const std::string revocation =
      R"({"key":"<k2>","trusted":[{"epoch":"<e1>","record":"<n0>","sequence":1}]})";
  const std::string root = signers("1", 1, "null");
  Seeds seeds = {
      lines({root, "A0"}),
      lines({root, "A0", signers("1", 2, "\"<n0>\"", revocation), signers("1", 3, "\"<n2>\"")}),
      lines({root, "A0", signers("1", 2, "\"<n0>\""), signers("1", 2, "\"<n0>\"", revocation)}),
      lines({root, "A0", signers("15", 2, "\"<n0>\"", "", 5), signers("5", 3, "\"<n2>\"", "", 5)}),
      lines({root, "A0", signers("5", 4, "null", "", 5), "A2"}),
      lines({root, "A0", "N0 <n0>", "N0 nonsense", "U{}", signers("5", 2, "\"<n0>\"", "", 5)}),
  };
  seeds.push_back(fuzz::readScript(root).evidence.signers_lists.front().text);
  return seeds;
}

Seeds recordSeeds() {
  const std::string root = signers("1", 1, "null");
  const std::string revoking =
      signers("1", 1, "null", R"({"key":"<k2>","trusted":[{"epoch":"<e1>","record":"<n0>","sequence":1}]})");
  const std::string first = record(2, 1, "null");
  const std::string second = record(2, 2, "\"<n0>\"");
  Seeds seeds = {
      lines({first, second, record(2, 3, "\"<n1>\""), root, "A3"}),
      lines({first, record(2, 3, "\"<n0>\""), root, "A2", "H1"}),
      lines({first, second, record(2, 2, "\"<n0>\"", "<n0>"), root, "A3"}),
      lines({first, second, record(2, 3, "\"<n1>\""), revoking, "A3"}),
      lines({first, signature(3, 1, "null", "<n0>"), signature(2, 2, "\"<n0>\"", "<n0>"), root, "A3"}),
      lines(
          {"P1a face", record(2, 1, "null", "", R"(,"personal":{"photo":"<n0>"})"), root, "A2", "E1a face"}),
      lines({"Q1a face", record(2, 1, "null", "", R"(,"personal":{"photo":"<n0>"})"), root, "A2"}),
      lines({first, "N0 <n0>", "N0 nonsense", record(6, 1, "null"), record(3, 1, "null"), root, "A5", "T{}"}),
  };
  const fuzz::Script script = fuzz::readScript(seeds[4]);
  for (const records::StoredText& stored : script.evidence.statements) seeds.push_back(stored.text);
  for (const std::string& payload : script.payloads) seeds.push_back(payload);
  return seeds;
}

Seeds canonicalSeeds() {
  Seeds seeds = {
      R"({"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"})",
      R"({"\n":"Newline","1":"One","<script>":"t","ö":"o","€":"Euro","😂":"Smiley","דּ":"Hebrew"})",
      "[0,-1,9007199254740991,5e-324,1.7976931348623157e+308,-0,1E3,100000000000000000000,1e+21,1e-7,0."
      "000001]",
      R"([[[[[[[[[[[[[[[[[[[[[[[[[["deep"]]]]]]]]]]]]]]]]]]]]]]]]]])",
      R"({"a":1,"a":2})",
      "\xEF\xBB\xBF{}",
      R"("\ud83d\ude02\u00e9\b\f\r\t")"};
  for (const std::string& payload : fuzz::readScript(recordSeeds()[4]).payloads) seeds.push_back(payload);
  return seeds;
}

Seeds jobSeeds() {
  Seeds seeds;
  addJson(seeds, formats::kSampleJob);
  return seeds;
}

Seeds proofSeeds() {
  Seeds seeds;
  addJson(seeds, formats::kSampleProof);
  return seeds;
}

Seeds surveySeeds() {
  Seeds seeds;
  addJson(seeds, formats::kSampleSurvey);
  return seeds;
}

Seeds liftLogSeeds() {
  return {
      formats::kSampleLog,
      "\xEF\xBB\xBFtime [ms],boom_sensor [deg],head_pressure [[psi]],\"odd \"\"one\"\"\",pitch "
      "[rad]\r\n0,1,2,x,\r\n1,1.5,3e2,\"a\r\nb\",0.01\r\n",
      "head_pressure [kPa],time [s],boom_sensor [mV],bucket_sensor [1],oil_temperature "
      "[K]\n8500,0,\"1100\",5,300\n,1,1,,\n",
      R"({"format":"hingepin-readings/1","points":[{"boom_sensor":"2.11 V","head_pressure":"88 bar","rod_pressure":"4 bar","bucket_sensor":"2.81 V","boom_speed":"8 deg/s","oil_temperature":"52 Cel"},{"boom_sensor":"2.2 V","head_pressure":"1290 [psi]"}]})"};
}

Seeds calibrationSeeds() {
  auto job = nlohmann::ordered_json::parse(formats::kSampleJob);
  job.erase("loads");
  const auto points = [](double bar) {
    nlohmann::ordered_json all = nlohmann::ordered_json::array();
    for (int step = 0; step < 6; ++step) {
      all.push_back({{"boom_sensor", std::to_string(2.10 + 0.12 * step) + " V"},
                     {"head_pressure", std::to_string(bar + step) + " bar"}});
    }
    return all;
  };
  job["lifts"] = {{{"kind", "empty"}, {"points", points(60)}}};
  Seeds seeds;
  const auto add = [&] {
    const auto read = formats::readJob(job.dump(), "job.json", formats::openerOf(formats::kSampleLogs));
    const auto made = read ? calibration::calibrate(read->job) : std::unexpected(read.error());
    if (!made) {
      std::fprintf(stderr, "a sample job is refused: %s\n", made.error().message.code.c_str());
      std::exit(1);
    }
    addJson(seeds, formats::writeCalibration(*made));
  };
  add();
  job["lifts"].push_back({{"kind", "test-mass"}, {"mass", "2000 kg"}, {"points", points(95)}});
  add();
  job["unit"].erase("linkage");
  add();
  return seeds;
}

std::string escaped(const std::string& word) {
  std::string text;
  for (const char byte : word) {
    char code[8];
    std::snprintf(code, sizeof(code), "\\x%02x", static_cast<unsigned>(static_cast<unsigned char>(byte)));
    text +=
        (byte < ' ' || byte > '~' || byte == '"' || byte == '\\') ? std::string(code) : std::string(1, byte);
  }
  return "\"" + text + "\"\n";
}

void write(const std::filesystem::path& folder, const std::string& target, const Seeds& seeds) {
  std::filesystem::create_directories(folder / target);
  std::set<std::string> words;
  const std::regex word(
      R"re("[^"\n]{1,40}"(:)?|<[kxen][0-9]>|[a-z_]+ \[[^,\n]{1,8}\]|-?[0-9]+(\.[0-9]+)?)re");
  for (std::size_t index = 0; index < seeds.size(); ++index) {
    std::ofstream(folder / target / ("seed-" + std::to_string(index)), std::ios::binary) << seeds[index];
    for (std::sregex_iterator at(seeds[index].begin(), seeds[index].end(), word), end;
         at != end && words.size() < 600; ++at) {
      words.insert(at->str());
    }
  }
  std::ofstream dictionary(folder / (target + ".dict"));
  for (const std::string& each : words) dictionary << escaped(each);
  std::printf("%s: %zu seeds, %zu words\n", target.c_str(), seeds.size(), words.size());
}

Seeds confirmationSeeds() {
  const std::string hash = records::base64Url(records::bytesOf(std::string(32, 'h')));
  const std::string nonce = records::base64Url(records::bytesOf(std::string(16, 'n')));
  const auto ask = [&](const std::string& attachment, const std::string& seen) {
    return R"({"at_ms":60000,)" + attachment + R"("by":")" + fuzz::scriptKey(0).id() + R"(","device":")" +
           fuzz::scriptKey(3).id() + R"(","format":"hingepin-ask/1","job":"0f1e2d3c","journal":")" + hash +
           R"(","nonce":")" + nonce + R"(","procedure":")" + hash + R"(","roles":["safety-lead"],"seen":[)" +
           seen + R"(],"step":"zone","text":"Is the zone clear?","unit":"L-27","utc_ms":1777880000000})";
  };
  const std::string answer = R"({"answer":"yes","device":")" + fuzz::scriptKey(2).id() +
                             R"(","format":"hingepin-answer/1","of":")" + hash +
                             R"(","role":"safety-lead","utc_ms":1777880000000})";
  const std::string key = records::publicKeyText(fuzz::scriptKey(1).publicKey());
  const std::string join = R"({"device":"phone-2","format":"hingepin-join/1","key":")" + key +
                           R"(","name":"Cy Specimen","nonce":")" + nonce + R"(","utc_ms":1777880000000})";
  const std::string admission = R"({"format":"hingepin-admission/1","names":[[")" + key +
                                R"(","Cy Specimen"]],"of":")" + hash + R"(","role":"safety-lead","root":")" +
                                hash + R"(","yard_key":")" + key + R"("})";
  return {join + "\n" + admission, ask("", "") + "\n" + answer,
          ask(R"("attachment":"GP-2.7",)", R"(["engine","off"],["boom","down"])") + "\n" + answer};
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) {
    std::fprintf(stderr, "usage: make_corpus FOLDER\n");
    return 2;
  }
  const std::filesystem::path folder = argv[1];
  write(folder, "procedure", procedureSeeds());
  write(folder, "journal", journalSeeds());
  write(folder, "record", recordSeeds());
  write(folder, "signers", signersSeeds());
  write(folder, "confirmation", confirmationSeeds());
  write(folder, "wrapped_key", fuzz::wrappedKeys());
  write(folder, "canonical_json", canonicalSeeds());
  write(folder, "job", jobSeeds());
  write(folder, "proof", proofSeeds());
  write(folder, "survey", surveySeeds());
  write(folder, "lift_log", liftLogSeeds());
  write(folder, "calibration", calibrationSeeds());
}
