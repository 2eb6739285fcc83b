// SPDX-License-Identifier: Apache-2.0
#include "engine/certificate/dcc.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <string>

#include "engine/session/certificate.h"
#include "tests/engine/certificate/example.h"
#include "tests/engine/cli/process.h"

namespace hingepin::certificate {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;
using ::testing::Not;

std::string dccOf(const Certificate& certificate, const std::string& language = "en") {
  return renderDcc(certificate, session::voiceOf({.language = language}), session::voiceOf({}));
}

std::string runOf(const std::string& command) {
  std::string said;
  FILE* const pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return "cannot run " + command;
  char buffer[4096];
  while (std::fgets(buffer, sizeof buffer, pipe) != nullptr) said += buffer;
  const int status = pclose(pipe);
  return status == 0 ? "" : said + "status " + std::to_string(status);
}

/// The file of a test, removed with it.
class File {
 public:
  explicit File(const std::string& text)
      : path_(fs::temp_directory_path() / ("dcc-" + std::to_string(getpid()) + ".xml")) {
    std::ofstream(path_, std::ios::binary) << text;
  }
  ~File() { fs::remove(path_); }
  File(const File&) = delete;
  File& operator=(const File&) = delete;
  File(File&&) = delete;
  File& operator=(File&&) = delete;
  [[nodiscard]] std::string path() const { return path_.string(); }

 private:
  fs::path path_;
};

/// Where the published schemas are: third-party files that a clone of this repository does not have.
fs::path schemas() { return fs::path(HINGEPIN_SOURCE_DIR) / "../shared/reference/dcc"; }

/// What the published schema says against a certificate; "" for nothing.
/// Source of the schemas: Physikalisch-Technische Bundesanstalt, DCC 3.2.1 and D-SI 2.1.0.
std::string faultsOf(const std::string& xml) {
  const File file(xml);
  return runOf("env '" + cli::xmlCatalogSetting(schemas() / "catalog.xml") +
               "' xmllint --nonet --noout --schema '" + (schemas() / "dcc_3.2.1.xsd").string() + "' '" +
               file.path() + "' 2>&1");
}

#define NEEDS_THE_SCHEMAS()                     \
  if (!fs::exists(schemas() / "dcc_3.2.1.xsd")) \
  GTEST_SKIP() << "not checked: the published schema " << (schemas() / "dcc_3.2.1.xsd") << " is not there"

class DccLanguageTest : public testing::TestWithParam<std::string> {};

TEST_P(DccLanguageTest, IsValidByThePublishedSchema) {
  NEEDS_THE_SCHEMAS();
  EXPECT_EQ(faultsOf(dccOf(exampleCertificate(), GetParam())), "");
}
INSTANTIATE_TEST_SUITE_P(Languages, DccLanguageTest, testing::Values("en", "es", "fr", "de", "pt-BR", "ar"),
                         languageOf);

TEST(DccTest, TheSchemaIsOneThatCanRefuse) {
  NEEDS_THE_SCHEMAS();
  std::string xml = dccOf(exampleCertificate());
  const std::size_t at = xml.find("<si:unit>");
  xml.erase(at, xml.find('\n', at) - at);
  EXPECT_THAT(faultsOf(xml), HasSubstr("fails to validate"));
}

TEST(DccTest, IsValidWithAsLittleAsThereCanBe) {
  NEEDS_THE_SCHEMAS();
  EXPECT_EQ(faultsOf(dccOf({})), "");
}

TEST(DccTest, IsValidWithHostileAndEmptyTexts) {
  NEEDS_THE_SCHEMAS();
  for (const std::string& hostile :
       {std::string("]]></dcc:name><x/> & \x01 \xFF \" '"), std::string(" \n\t "), std::string()}) {
    const Certificate certificate = exampleWith(hostile, "");
    EXPECT_EQ(faultsOf(dccOf(certificate)), "") << hostile;
  }
}

TEST(DccTest, EveryResultNamesReadingsThatAreThere) {
  const std::string xml = dccOf(exampleCertificate());
  std::set<std::string> ids;
  static const std::regex id(" id=\"(reading-[0-9]+)\"");
  for (auto each = std::sregex_iterator(xml.begin(), xml.end(), id); each != std::sregex_iterator(); ++each) {
    EXPECT_TRUE(ids.insert((*each)[1]).second) << (*each)[1];
  }
  EXPECT_EQ(ids.size(), exampleCertificate().readings.size());
  static const std::regex from(" refId=\"([^\"]*)\"");
  std::size_t references = 0;
  for (auto each = std::sregex_iterator(xml.begin(), xml.end(), from); each != std::sregex_iterator();
       ++each) {
    std::istringstream names((*each)[1]);
    for (std::string name; names >> name; ++references) EXPECT_TRUE(ids.contains(name)) << name;
  }
  EXPECT_GT(references, 50U);
}

TEST(DccTest, QuantitiesAreInTheSi) {
  EXPECT_EQ(siUnitOf("kg").code, R"(\kilogram)");
  EXPECT_NEAR(2.5 * siUnitOf("[ston_av]").factor, 2267.96185, 1e-9)
      << "NIST Handbook 44, Appendix C: 2000 lb of 0.45359237 kg";
  EXPECT_NEAR(212 * siUnitOf("[degF]").factor + siUnitOf("[degF]").offset, 100, 1e-9) << "water boils";
  EXPECT_NEAR(siUnitOf("rad").factor, 57.29577951308232, 1e-12);
  EXPECT_EQ(siUnitOf("%").factor, 0.01);
  EXPECT_EQ(siUnitOf("furlong").code, R"(\one)");
}

TEST(DccTest, AnErrorCarriesItsUncertaintyFactorCoverageAndVerdict) {
  const std::string xml = dccOf(exampleCertificate());
  const std::size_t at = xml.find("Error of indication");
  const std::string error = xml.substr(at, xml.find("</dcc:quantity>", at) - at);
  EXPECT_THAT(error, HasSubstr("<si:value>61.7</si:value>"));
  EXPECT_THAT(error, HasSubstr(R"(<si:unit>\kilogram</si:unit>)"));
  EXPECT_THAT(error, HasSubstr("<si:uncertainty>6.4</si:uncertainty>"));
  EXPECT_THAT(error, HasSubstr("<si:coverageFactor>2.32</si:coverageFactor>"));
  EXPECT_THAT(error, HasSubstr("<si:coverageProbability>0.9545</si:coverageProbability>"));
  EXPECT_THAT(error, HasSubstr("<dcc:conformity>fail</dcc:conformity>"));
}

TEST(DccTest, EnglishStandsBesideAnotherLanguage) {
  const std::string xml = dccOf(exampleCertificate(), "de");
  EXPECT_THAT(xml, HasSubstr("<dcc:content lang=\"de\">Messabweichung der Anzeige</dcc:content>"));
  EXPECT_THAT(xml, HasSubstr("<dcc:content lang=\"en\">Error of indication</dcc:content>"));
  EXPECT_THAT(dccOf(exampleCertificate()), Not(HasSubstr("lang=\"de\"")));
}

TEST(DccTest, WhatIsUndecidedIsNeitherPassNorFail) {
  Certificate certificate = exampleCertificate();
  for (Proof& proof : certificate.proofs) {
    proof.verdict = Verdict::Undecided;
    for (Result& result : proof.results) result.verdict = Verdict::Undecided;
  }
  certificate.stops.clear();
  const std::string xml = dccOf(certificate);
  EXPECT_THAT(xml, Not(HasSubstr("<dcc:conformity>")));
  EXPECT_THAT(xml, HasSubstr("can&#39;t be decided yet"));
}

}  // namespace
}  // namespace hingepin::certificate
