// SPDX-License-Identifier: Apache-2.0
#include "engine/certificate/html.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <regex>
#include <string>

#include "engine/certificate/drawing.h"
#include "engine/session/certificate.h"
#include "tests/engine/certificate/example.h"

namespace hingepin::certificate {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

std::string page(const Certificate& certificate, const std::string& language = "en",
                 UnitSystem system = UnitSystem::Metric) {
  return renderHtml(certificate, session::voiceOf({.language = language, .system = system}));
}

/// The attributes of every element of a page that has a certain one, by that one's value.
std::map<std::string, std::map<std::string, std::string>> elementsWith(const std::string& html,
                                                                       const std::string& key) {
  std::map<std::string, std::map<std::string, std::string>> found;
  static const std::regex element("<[a-z0-9]+( [a-z-]+=\"[^\"]*\")+>");
  static const std::regex attribute(" ([a-z-]+)=\"([^\"]*)\"");
  for (auto tag = std::sregex_iterator(html.begin(), html.end(), element); tag != std::sregex_iterator();
       ++tag) {
    std::map<std::string, std::string> attributes;
    const std::string text = tag->str();
    for (auto each = std::sregex_iterator(text.begin(), text.end(), attribute);
         each != std::sregex_iterator(); ++each) {
      attributes[(*each)[1]] = (*each)[2];
    }
    if (attributes.contains(key)) found[attributes[key]] = attributes;
  }
  return found;
}

/// Tags opened and closed in order, those that HTML never closes left out. @return what is wrong, or ""
std::string nestingFault(const std::string& html) {
  static const std::regex tag("<(/?)([a-z0-9]+)[^>]*>");
  std::vector<std::string> open;
  for (auto each = std::sregex_iterator(html.begin(), html.end(), tag); each != std::sregex_iterator();
       ++each) {
    const std::string name = (*each)[2];
    if (name == "meta" || name == "img" || name == "br") continue;
    if ((*each)[1].length() == 0) {
      open.push_back(name);
    } else if (open.empty() || open.back() != name) {
      return "closes " + name + " within " + (open.empty() ? "nothing" : open.back());
    } else {
      open.pop_back();
    }
  }
  return open.empty() ? "" : "leaves open " + open.back();
}

TEST(HtmlTest, EveryNumberStandsThereWithValueUnitUncertaintyAndItsReadings) {
  const Certificate certificate = exampleCertificate();
  const std::string html = page(certificate);
  const auto numbers = elementsWith(html, "data-figure");
  const auto readings = elementsWith(html, "data-reading");
  for (const auto& [name, figure] : figuresOf(certificate)) {
    ASSERT_TRUE(numbers.contains(name)) << name;
    const auto& said = numbers.at(name);
    EXPECT_NEAR(std::strtod(said.at("data-value").c_str(), nullptr), figure->amount.value,
                0.5 * std::pow(10, -figure->amount.decimals) + 1e-9)
        << name;
    EXPECT_EQ(said.at("data-unit"), figure->amount.ucum) << name;
    EXPECT_EQ(said.contains("data-u"), figure->expanded_uncertainty.has_value()) << name;
    if (figure->expanded_uncertainty) {
      EXPECT_NEAR(std::strtod(said.at("data-u").c_str(), nullptr), *figure->expanded_uncertainty,
                  0.5 * std::pow(10, -figure->amount.decimals) + 1e-9)
          << name;
      EXPECT_NEAR(std::strtod(said.at("data-k").c_str(), nullptr), figure->coverage_factor, 0.005) << name;
    }
    ASSERT_NE(said.contains("data-readings"), said.contains("data-entry")) << name;
    if (!said.contains("data-readings")) continue;
    std::istringstream numbers_of(said.at("data-readings"));
    std::size_t count = 0;
    for (std::string number; numbers_of >> number; ++count)
      EXPECT_TRUE(readings.contains(number)) << name << " " << number;
    EXPECT_EQ(count, figure->readings.size()) << name;
  }
  EXPECT_EQ(numbers.size(), figuresOf(certificate).size()) << "and no number that is not the certificate's";
  EXPECT_EQ(readings.size(), certificate.readings.size());
}

TEST(HtmlTest, NamesWithMarkupAreWordsAndNothingElse) {
  const std::string hostile =
      "</title></td></bdi><script>alert('1')</script>\" onload=\"x\" <img src=x onerror=y>&amp;";
  const Certificate certificate = exampleWith(hostile, "DE");
  for (const char* const language : {"en", "ar"}) {
    const std::string html = page(certificate, language);
    EXPECT_EQ(nestingFault(html), "");
    EXPECT_THAT(html, Not(HasSubstr("<script")));
    EXPECT_THAT(html, Not(HasSubstr("onload=\"")));
    EXPECT_THAT(html, Not(HasSubstr("<img src=x")));
    EXPECT_THAT(html, HasSubstr("&lt;script&gt;alert(&#39;1&#39;)"));
  }
}

TEST(HtmlTest, NeedsNothingBesideIt) {
  const std::string html = page(exampleCertificate());
  EXPECT_EQ(nestingFault(html), "");
  for (const auto& [source, element] : elementsWith(html, "src"))
    EXPECT_TRUE(source.starts_with("data:")) << source;
  for (const char* const outside : {"<link", "<script", "@import", "url(", "href=\"http"}) {
    EXPECT_THAT(html, Not(HasSubstr(outside)));
  }
}

class CertificateLanguageTest : public testing::TestWithParam<std::string> {};

/// ISO/IEC 17025:2017, 7.8.2.1 and 7.8.4.1 (from memory of their lists): what a certificate has to
/// say; 7.8.6.2: the decision rule.
TEST_P(CertificateLanguageTest, SaysWhatACertificateHasToSay) {
  const Certificate certificate = exampleCertificate();
  const session::Reader reader{.language = GetParam()};
  const Voice voice = session::voiceOf(reader);
  const std::string html = renderHtml(certificate, voice);
  for (const char* const code :
       {"certificate-title", "certificate-laboratory", "certificate-customer", "certificate-place",
        "certificate-number", "document-procedure", "document-ended", "certificate-issued",
        "document-as-found", "certificate-as-left", "certificate-traceability", "certificate-item-only",
        "certificate-not-accredited", "document-not-for-trade", "certificate-end", "document-sealed-by",
        "document-conditions"}) {
    const std::string words = voice.say({code, {}});
    EXPECT_NE(words, code);
    EXPECT_THAT(html, HasSubstr(words)) << code;
  }
  EXPECT_THAT(html, HasSubstr(voice.say({"certificate-rule-simple", {}})));
  EXPECT_THAT(html, HasSubstr(certificate.procedure_hash));
  EXPECT_THAT(html, HasSubstr(certificate.record));
  EXPECT_THAT(html, HasSubstr("lang=\"" + GetParam() + "\""));
  EXPECT_EQ(html.find("dir=\"rtl\"") != std::string::npos, GetParam() == "ar");
  EXPECT_EQ(html.find("certificate-"), std::string::npos) << "a code without words";
  EXPECT_EQ(html.find("proof-undecided"), std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(Languages, CertificateLanguageTest,
                         testing::Values("en", "es", "fr", "de", "pt-BR", "ar"), languageOf);

TEST(HtmlTest, AVerdictIsAWordAndASignNotAColourAlone) {
  const std::string html = page(exampleCertificate());
  EXPECT_THAT(html, HasSubstr("✓ holds"));
  EXPECT_THAT(html, HasSubstr("✖ does not hold"));
  EXPECT_THAT(html, HasSubstr("? can&#39;t be decided yet"));
}

TEST(HtmlTest, SaysThatThereIsNoProofWhereThereIsNone) {
  Certificate certificate = exampleCertificate();
  certificate.proofs.clear();
  const std::string html = page(certificate);
  EXPECT_THAT(html, HasSubstr("no proof against a known mass"));
  EXPECT_THAT(html, Not(HasSubstr("Errors of indication over")));
}

TEST(HtmlTest, ForAReaderOfUsUnitsNumbersAreInPoundsAndTheDataAsMeasured) {
  const std::string html = page(exampleCertificate(), "en", UnitSystem::UsCustomary);
  EXPECT_THAT(html, HasSubstr(">4409.2\u00A0lb<"));
  const auto numbers = elementsWith(html, "data-figure");
  EXPECT_EQ(numbers.at("as-left/2/reference").at("data-value"), "2000.0");
  EXPECT_EQ(numbers.at("as-left/2/reference").at("data-unit"), "kg");
}

TEST(DrawingTest, ThePlotHasAMarkForEachResultAndTheLimits) {
  const Certificate certificate = exampleCertificate();
  const std::string svg = errorPlot(certificate, session::voiceOf({}));
  const auto count = [&](const std::string& part) {
    std::size_t found = 0;
    for (std::size_t at = svg.find(part); at != std::string::npos; at = svg.find(part, at + 1)) ++found;
    return found;
  };
  EXPECT_EQ(count("<circle"), 1 + 1) << "as found, and in the legend";
  EXPECT_EQ(count("width='9'"), 4 + 1) << "as left, and in the legend";
  EXPECT_EQ(count("<polyline"), 2) << "upper and lower limit";
  EXPECT_EQ(svg.find("nan"), std::string::npos);
}

}  // namespace
}  // namespace hingepin::certificate
