#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""What can be known of the packaging for Android, iOS and Linux without their kits."""

import configparser
import json
import os
import pathlib
import plistlib
import re
import shutil
import struct
import subprocess
import unittest
import xml.etree.ElementTree as xml

TOP = pathlib.Path(__file__).resolve().parents[2]
MOBILE = TOP / "mobile"
ANDROID = MOBILE / "android"
IOS = MOBILE / "ios"
LINUX = MOBILE / "linux"
APP_ID = "org.hingepin.app"
LANGUAGES = {"en", "es", "fr", "de", "pt-BR", "ar"}

# Why the app may ask, and what in its sources needs it.
ANDROID_PERMISSIONS = {
    "android.permission.CAMERA": ("photos that a step asks for", r"CaptureSession"),
    "android.permission.VIBRATE": ("tells without a sound that a pose is held", r'"vibrator'),
    "android.permission.INTERNET": ("a sensor gateway in the yard's own network", r"QTcpSocket"),
}
IOS_DESCRIPTIONS = {"NSCameraUsageDescription", "NSLocalNetworkUsageDescription", "NSMotionUsageDescription"}

# What names this installation and must not be in a backup, below the folder of the app's data.
KEPT_HERE = {"yard/keys", "yard/installation.json", "demo"}

# Names of formats, never connected to.
HOSTS = {"schemas.android.com", "www.w3.org", "www.apple.com"}


def packaged(pattern="*"):
    return sorted(
        path
        for folder in (ANDROID, IOS, LINUX, MOBILE / "icons")
        for path in folder.rglob(pattern)
        if path.is_file()
    )


def text(path):
    return path.read_text(encoding="utf-8")


def android(name):
    return "{http://schemas.android.com/apk/res/android}" + name


def plist(name):
    with open(IOS / name, "rb") as stream:
        return plistlib.load(stream)


def sources():
    return "\n".join(
        text(path) for folder in ("app", "qml") for path in (MOBILE / folder).rglob("*") if path.suffix in {".cpp", ".h", ".qml"}
    )


def picture(path):
    """Width, height and whether it has an alpha channel (PNG, ISO/IEC 15948, 11.2.2 IHDR)."""
    head = path.read_bytes()[:26]
    assert head[:8] == b"\x89PNG\r\n\x1a\n" and head[12:16] == b"IHDR", path
    width, height = struct.unpack(">II", head[16:24])
    return width, height, head[25] in (4, 6)


class FilesTest(unittest.TestCase):
    def test_every_xml_file_is_well_formed(self):
        files = [p for p in packaged() if p.suffix in {".xml", ".svg", ".plist", ".xcprivacy", ".entitlements"}]
        self.assertGreaterEqual(len(files), 12)
        for path in files:
            with self.subTest(path.name):
                xml.parse(path)

    def test_no_host_is_named_but_those_of_formats(self):
        for path in packaged() + [MOBILE / "packaging.cmake"]:
            if path.suffix == ".png":
                continue
            named = set(re.findall(r"[a-z]+://([^/\s\"'<>]+)", text(path)))
            self.assertLessEqual(named, HOSTS, path)

    def test_nothing_brings_its_own_list_of_places_to_download_from(self):
        self.assertEqual([], [p for p in packaged() if "gradle" in p.name or p.suffix in {".jar", ".aar"}])

    def test_the_languages_are_those_of_the_procedures(self):
        self.assertEqual(LANGUAGES, {p.name for p in (TOP / "translations" / "procedures").iterdir() if p.is_dir()})


class IconTest(unittest.TestCase):
    def test_pictures_have_their_sizes(self):
        sizes = {str(p.relative_to(MOBILE)): picture(p) for p in packaged("*.png")}
        self.assertEqual(
            {
                "linux/icons/48x48/org.hingepin.app.png": (48, 48, True),
                "linux/icons/128x128/org.hingepin.app.png": (128, 128, True),
                "linux/icons/256x256/org.hingepin.app.png": (256, 256, True),
                # iOS takes no transparency in an app's icon.
                "ios/Assets.xcassets/AppIcon.appiconset/icon-1024.png": (1024, 1024, False),
                "ios/Assets.xcassets/LaunchIcon.imageset/launch-240.png": (240, 240, True),
            },
            sizes,
        )

    def test_pictures_are_small(self):
        self.assertLess(sum(p.stat().st_size for p in packaged("*.png")), 100_000)

    def test_the_vector_drawable_has_the_paths_of_the_drawing(self):
        drawn = [
            (p.get("id"), p.get("d"), p.get("stroke"), p.get("stroke-width"), p.get("stroke-linecap"), p.get("fill"))
            for p in xml.parse(MOBILE / "icons" / f"{APP_ID}.svg").iter("{http://www.w3.org/2000/svg}path")
        ]
        vector = [
            tuple(p.get(android(n)) for n in ("name", "pathData", "strokeColor", "strokeWidth", "strokeLineCap"))
            + (p.get(android("fillColor"), "none"),)
            for p in xml.parse(ANDROID / "res/drawable/ic_foreground.xml").iter("path")
        ]
        self.assertEqual(drawn, vector)
        self.assertGreater(len(drawn), 3)

    def test_all_grounds_have_one_colour(self):
        ground = xml.parse(MOBILE / "icons" / f"{APP_ID}.svg").find("{http://www.w3.org/2000/svg}rect").get("fill")
        self.assertEqual(ground, xml.parse(ANDROID / "res/values/colors.xml").find("color[@name='icon_ground']").text)
        parts = json.loads(text(IOS / "Assets.xcassets/LaunchGround.colorset/Contents.json"))["colors"][0]["color"]["components"]
        self.assertEqual(ground, "#" + "".join(parts[c][2:].lower() for c in ("red", "green", "blue")))


class AndroidTest(unittest.TestCase):
    def setUp(self):
        self.manifest = xml.parse(ANDROID / "AndroidManifest.xml").getroot()
        self.application = self.manifest.find("application")

    def test_every_permission_has_its_reason_and_something_that_needs_it(self):
        asked = {p.get(android("name")) for p in self.manifest.findall("uses-permission")}
        self.assertEqual(set(ANDROID_PERMISSIONS), asked)
        code = sources()
        for name, (reason, needed_by) in ANDROID_PERMISSIONS.items():
            self.assertTrue(reason)
            self.assertRegex(code, needed_by, f"nothing needs {name}")

    def test_no_tool_adds_permissions_or_features_of_its_own(self):
        manifest = text(ANDROID / "AndroidManifest.xml")
        self.assertNotIn("INSERT_PERMISSIONS", manifest)
        self.assertNotIn("INSERT_FEATURES", manifest)

    def test_no_feature_of_a_phone_is_required(self):
        features = self.manifest.findall("uses-feature")
        self.assertTrue(features)
        self.assertEqual({"false"}, {f.get(android("required")) for f in features})

    def test_the_screen_may_turn(self):
        activity = self.application.find("activity")
        self.assertIn(activity.get(android("screenOrientation")), {"unspecified", "user", "fullUser", "fullSensor"})
        self.assertIn("orientation", activity.get(android("configChanges")).split("|"))

    def test_only_the_screen_can_be_started_from_outside(self):
        open_to_others = [e.get(android("name")) for e in self.application if e.get(android("exported")) == "true"]
        self.assertEqual(["org.qtproject.qt.android.bindings.QtActivity"], open_to_others)
        for element in ("activity", "provider"):
            self.assertIn(self.application.find(element).get(android("exported")), {"true", "false"})

    def test_what_is_named_is_there(self):
        self.assertEqual(APP_ID, self.manifest.get("package"))
        provider = self.application.find("provider").get(android("name"))
        java = text(ANDROID / "src" / (provider.replace(".", "/") + ".java"))
        package, _, name = provider.rpartition(".")
        self.assertIn(f"package {package};", java)
        self.assertIn(f"class {name} extends ContentProvider", java)
        self.assertEqual("${applicationId}.handover", self.application.find("provider").get(android("authorities")))
        self.assertIn('getPackageName() + ".handover"', java)

        values = {}
        for path in (ANDROID / "res/values").glob("*.xml"):
            for element in xml.parse(path).getroot():
                values.setdefault(element.tag, set()).add(element.get("name"))
        named = {m for p in packaged("*.xml") if ANDROID in p.parents for m in re.findall(r'"@(\w+)/(\w+)"', text(p))}
        self.assertGreaterEqual(len(named), 6)
        for kind, resource in named:
            files = list((ANDROID / "res").glob(f"{kind}*/{resource}.xml"))
            self.assertTrue(files or resource in values.get(kind, ()), f"@{kind}/{resource}")

    def test_the_backup_rules_leave_keys_and_installation_on_the_phone(self):
        def excluded(element):
            self.assertEqual([], element.findall("include"))
            return {e.get("path") for e in element.findall("exclude") if e.get("domain") == "file"}

        self.assertEqual("@xml/data_extraction_rules", self.application.get(android("dataExtractionRules")))
        self.assertEqual("@xml/full_backup_content", self.application.get(android("fullBackupContent")))
        rules = xml.parse(ANDROID / "res/xml/data_extraction_rules.xml").getroot()
        self.assertEqual(KEPT_HERE, excluded(rules.find("cloud-backup")))
        self.assertEqual(KEPT_HERE, excluded(rules.find("device-transfer")))
        self.assertEqual("true", rules.find("cloud-backup").get("disableIfNoEncryptionCapabilities"))
        self.assertEqual(KEPT_HERE, excluded(xml.parse(ANDROID / "res/xml/full_backup_content.xml").getroot()))

    def test_the_deployment_tool_knows_each_mark_to_fill_in(self):
        tool = next((p for p in (shutil.which("androiddeployqt"), "/usr/lib/qt6/bin/androiddeployqt") if p and os.path.exists(p)), None)
        if tool is None:
            self.skipTest("no androiddeployqt here")
        program = pathlib.Path(tool).read_bytes()
        marks = re.findall(r"-- %%\w+%% --", text(ANDROID / "AndroidManifest.xml"))
        self.assertIn("-- %%INSERT_APP_LIB_NAME%% --", marks)
        for mark in marks:
            known = any(mark.encode(encoding) in program for encoding in ("ascii", "utf-16-le"))
            self.assertTrue(known, mark)


class KeptHereTest(unittest.TestCase):
    def test_the_rules_name_the_folders_and_files_that_the_code_makes(self):
        app = text(MOBILE / "app/app.cpp")
        folder = text(TOP / "engine/folder/folder.cpp")
        for name in ("yard", "demo"):
            self.assertIn(f'QStringLiteral("{name}")', app)
        for name in ("keys", "installation.json"):
            self.assertIn(f'"{name}"', folder)

    def test_ios_marks_the_same(self):
        self.assertEqual(KEPT_HERE, set(re.findall(r'filePath\(QStringLiteral\("([^"]+)"\)', text(IOS / "backup.cpp"))))


class IosTest(unittest.TestCase):
    def test_the_property_list_says_what_it_must(self):
        info = plist("Info.plist")
        self.assertEqual(LANGUAGES, set(info["CFBundleLocalizations"]))
        self.assertEqual(IOS_DESCRIPTIONS, {k for k in info if k.endswith("UsageDescription")})
        self.assertEqual(4, len(info["UISupportedInterfaceOrientations"]))
        assets = {p.stem for p in (IOS / "Assets.xcassets").iterdir() if p.is_dir()}
        self.assertLessEqual(set(info["UILaunchScreen"].values()) | {"AppIcon"}, assets)

    def test_every_language_says_why_it_asks(self):
        strings = {}
        for language in LANGUAGES:
            words = text(IOS / f"{language}.lproj/InfoPlist.strings")
            strings[language] = dict(re.findall(r'^"(\w+)" = "([^"]+)";$', words, re.MULTILINE))
            self.assertEqual(IOS_DESCRIPTIONS, set(strings[language]), language)
        self.assertEqual(LANGUAGES, {p.stem for p in IOS.glob("*.lproj")})
        info = plist("Info.plist")
        for key in IOS_DESCRIPTIONS:
            self.assertEqual(info[key], strings["en"][key])
            self.assertEqual(len(LANGUAGES), len({s[key] for s in strings.values()}), f"{key} isn't translated")
            self.assertRegex(strings["ar"][key], "[\u0600-\u06ff]")

    def test_the_build_puts_every_language_in(self):
        listed = re.search(r"foreach\(LANGUAGE ([^)]+)\)", text(MOBILE / "packaging.cmake")).group(1)
        self.assertEqual(LANGUAGES, set(listed.split()))

    def test_nothing_is_collected(self):
        privacy = plist("PrivacyInfo.xcprivacy")
        self.assertIs(False, privacy["NSPrivacyTracking"])
        self.assertEqual([], privacy["NSPrivacyTrackingDomains"] + privacy["NSPrivacyCollectedDataTypes"])
        self.assertTrue(all(entry["NSPrivacyAccessedAPITypeReasons"] for entry in privacy["NSPrivacyAccessedAPITypes"]))

    def test_files_are_locked_with_the_phone(self):
        self.assertEqual(
            "NSFileProtectionCompleteUnlessOpen",
            plist("hingepin.entitlements")["com.apple.developer.default-data-protection"],
        )

    def test_the_asset_catalogue_holds_what_it_lists(self):
        catalogues = list((IOS / "Assets.xcassets").rglob("Contents.json"))
        self.assertEqual(4, len(catalogues))
        for path in catalogues:
            for image in json.loads(text(path)).get("images", []):
                width = picture(path.parent / image["filename"])[0]
                if "size" in image:
                    self.assertEqual(image["size"], f"{width}x{width}")


class LinuxTest(unittest.TestCase):
    def setUp(self):
        self.desktop_file = LINUX / f"{APP_ID}.desktop"
        self.metainfo_file = LINUX / f"{APP_ID}.metainfo.xml"

    def test_the_desktop_file_has_every_language(self):
        parser = configparser.ConfigParser(interpolation=None, delimiters=("=",))
        parser.optionxform = str
        parser.read(self.desktop_file, encoding="utf-8")
        entry = parser["Desktop Entry"]
        self.assertEqual((APP_ID, "hingepin-app"), (entry["Icon"], entry["Exec"]))
        for key in ("Name", "GenericName", "Comment"):
            for language in LANGUAGES - {"en"}:
                self.assertIn(f"{key}[{language.replace('-', '_')}]", entry)

    def test_the_metainfo_has_every_language_and_the_version_of_the_project(self):
        lang = "{http://www.w3.org/XML/1998/namespace}lang"
        root = xml.parse(self.metainfo_file).getroot()
        for elements in (root.findall("summary"), root.findall("description/p")):
            self.assertEqual(LANGUAGES, {e.get(lang, "en").replace("_", "-") for e in elements})
        version = re.search(r"project\(hingepin VERSION (\S+)", text(TOP / "CMakeLists.txt")).group(1)
        self.assertEqual(version, root.find("releases/release").get("version"))
        self.assertEqual((APP_ID, f"{APP_ID}.desktop"), (root.findtext("id"), root.findtext("launchable")))

    def check(self, *command):
        if shutil.which(command[0]) is None:
            self.skipTest(f"no {command[0]} here")
        done = subprocess.run(command, capture_output=True, text=True)
        self.assertEqual((0, ""), (done.returncode, done.stderr), done.stdout)

    def test_desktop_file_validate_finds_nothing(self):
        self.check("desktop-file-validate", str(self.desktop_file))

    def test_appstreamcli_finds_nothing(self):
        self.check("appstreamcli", "validate", "--no-net", str(self.metainfo_file))


@unittest.skipUnless(os.environ.get("HINGEPIN_INSTALLED"), "HINGEPIN_INSTALLED names no folder to which the app was installed")
class InstalledTest(unittest.TestCase):
    def test_everything_is_where_a_desktop_looks_for_it(self):
        top = pathlib.Path(os.environ["HINGEPIN_INSTALLED"])
        icons = {f"share/icons/hicolor/{size}x{size}/apps/{APP_ID}.png" for size in (48, 128, 256)}
        self.assertEqual(
            icons
            | {
                "bin/hingepin-app",
                f"share/applications/{APP_ID}.desktop",
                f"share/icons/hicolor/scalable/apps/{APP_ID}.svg",
                f"share/metainfo/{APP_ID}.metainfo.xml",
            },
            {str(p.relative_to(top)) for p in top.rglob("*") if p.is_file()},
        )

    def test_the_installed_program_starts(self):
        program = pathlib.Path(os.environ["HINGEPIN_INSTALLED"]) / "bin/hingepin-app"
        done = subprocess.run(
            [program, "--version"], capture_output=True, text=True, env={**os.environ, "QT_QPA_PLATFORM": "offscreen"}
        )
        version = re.search(r"project\(hingepin VERSION (\S+)", text(TOP / "CMakeLists.txt")).group(1)
        self.assertEqual((0, f"Hingepin {version}\n"), (done.returncode, done.stdout))


if __name__ == "__main__":
    unittest.main(verbosity=2)
