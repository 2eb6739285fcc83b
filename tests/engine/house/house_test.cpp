// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "tests/engine/house/house_rules.h"

namespace hingepin::house {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

using Rule = std::vector<std::string> (*)(std::string_view path, std::string_view text);

std::vector<std::string> breachesOf(Rule rule) {
  const std::filesystem::path top = HINGEPIN_SOURCE_DIR;
  std::vector<std::string> breaches;
  for (const std::string& path : projectFiles(top)) {
    const std::string text = readFile(top / path);
    if (!isText(text)) continue;
    const std::vector<std::string> found = rule(path, text);
    breaches.insert(breaches.end(), found.begin(), found.end());
  }
  return breaches;
}

TEST(HouseTest, TheScanReachesEveryFolder) {
  const std::vector<std::string> files = projectFiles(HINGEPIN_SOURCE_DIR);
  for (const char* path : {"CMakeLists.txt", ".clang-format", ".ci/run", "engine/base/error.h", "mobile/run",
                           "tests/engine/house/house_test.cpp"}) {
    EXPECT_THAT(files, Contains(path));
  }
}

TEST(HouseTest, NoAreaIncludesOneThatItMayNotKnow) { EXPECT_THAT(breachesOf(forbiddenIncludes), IsEmpty()); }

TEST(HouseTest, EachFileNamesTheLicenceOfItsFolder) { EXPECT_THAT(breachesOf(missingLicence), IsEmpty()); }

TEST(HouseTest, NoFileNamesAPathOfSomebodysMachine) { EXPECT_THAT(breachesOf(machinePaths), IsEmpty()); }

TEST(IncludeRuleTest, AnArrowThatIsNotOnTheListIsReportedWithItsLine) {
  EXPECT_THAT(
      forbiddenIncludes("engine/units/ucum.cpp", "\n#include \"engine/linkage/linkage.h\"\n"),
      ElementsAre("engine/units/ucum.cpp:2: includes engine/linkage/linkage.h: units may not know linkage"));
  EXPECT_THAT(forbiddenIncludes("engine/simulator/loader.h", "#include \"engine/calibration/model.h\""),
              SizeIs(1));
  EXPECT_THAT(forbiddenIncludes("engine/calibration/lift.cpp", "#include \"engine/formats/csv.h\""),
              SizeIs(1));
  EXPECT_THAT(forbiddenIncludes("engine/base/error.h", "# include <engine/units/ucum.h> // why"), SizeIs(1));
}

TEST(IncludeRuleTest, AnAreaMayKnowItselfAndWhatItsNeighboursMayKnow) {
  EXPECT_THAT(
      forbiddenIncludes("engine/calibration/lift.cpp",
                        "#include <vector>\n#include <Eigen/QR>\n#include \"engine/calibration/job.h\"\n"
                        "#include \"engine/linkage/linkage.h\"\n#include \"engine/base/error.h\"\n"),
      IsEmpty());
  EXPECT_THAT(forbiddenIncludes("engine/session/practice.h", "#include \"engine/simulator/loader.h\""),
              IsEmpty());
}

TEST(IncludeRuleTest, QtBelowTheEngineIsReportedHoweverItIsWritten) {
  for (const char* header : {"<QString>", "<QtCore/QString>", "<QtCore>", "<qglobal.h>", "\"QObject\""}) {
    EXPECT_THAT(forbiddenIncludes("engine/session/job.h", std::string("#include ") + header),
                ElementsAre(HasSubstr("Qt below engine/")))
        << header;
  }
  EXPECT_THAT(forbiddenIncludes("mobile/bridge/job_model.h", "#include <QString>"), IsEmpty());
}

TEST(IncludeRuleTest, TheEngineDoesNotKnowTheAppAndTheAppKnowsOnlyTheSession) {
  EXPECT_THAT(forbiddenIncludes("engine/session/job.h", "#include \"mobile/bridge/job_model.h\""), SizeIs(1));
  EXPECT_THAT(forbiddenIncludes("mobile/bridge/job_model.cpp", "#include \"engine/calibration/job.h\""),
              SizeIs(1));
  EXPECT_THAT(forbiddenIncludes("mobile/bridge/job_model.cpp", "#include \"engine/session/job.h\""),
              IsEmpty());
}

TEST(IncludeRuleTest, AnIncludeThatHidesItsAreaIsReported) {
  EXPECT_THAT(forbiddenIncludes("engine/units/ucum.cpp", "#include \"../linkage/linkage.h\""), SizeIs(1));
}

TEST(IncludeRuleTest, AnAreaThatNobodyPutOnTheListIsReported) {
  EXPECT_THAT(forbiddenIncludes("engine/misc/misc.h", "#include \"engine/base/error.h\""),
              ElementsAre(HasSubstr("area misc is not on the list")));
}

TEST(LicenceRuleTest, AMissingLateOrWrongLineIsReported) {
  const std::string apache = std::string("// SPDX-License-Identifier: ") + "Apache-2.0\n";
  EXPECT_THAT(missingLicence("engine/base/error.h", apache), IsEmpty());
  EXPECT_THAT(missingLicence("engine/base/error.h", "#pragma once\n"), SizeIs(1));
  EXPECT_THAT(missingLicence("engine/base/error.h", "\n\n\n\n\n" + apache), SizeIs(1));
  EXPECT_THAT(missingLicence("mobile/app/main.cpp", apache), SizeIs(1));
  EXPECT_THAT(missingLicence("engine/base/error.h", "// SPDX-License-Identifier: Apache-2.01\n"), SizeIs(1));
  EXPECT_THAT(missingLicence("README.md", "<!-- SPDX-License-Identifier: Apache-2.0 -->\n"), IsEmpty());
}

TEST(LicenceRuleTest, OnlyFilesWithoutCommentsAreExcepted) {
  EXPECT_THAT(missingLicence("CMakePresets.json", "{}"), IsEmpty());
  EXPECT_THAT(missingLicence("tests/reference/gravity.csv", "a,b\n"), IsEmpty());
  EXPECT_THAT(missingLicence("tests/run", "#!/usr/bin/env bash\n"), SizeIs(1));
}

TEST(MachinePathRuleTest, APathOfSomebodysMachineIsReported) {
  const std::string folder = "root";
  EXPECT_THAT(machinePaths("engine/base/error.h", "// see /" + folder + "/notes"), SizeIs(1));
  EXPECT_THAT(machinePaths("engine/base/error.h", "// see tests/reference/strd"), IsEmpty());
}

}  // namespace
}  // namespace hingepin::house
