# SPDX-License-Identifier: Apache-2.0
"""The bill of materials names what is built in, at the version that is installed, and its links lead somewhere. Required fields: SPDX 2.3,
clauses 6 (document), 7 (package) and 11 (relationship), from memory."""
import json
import pathlib
import subprocess
import sys
import unittest

SCRIPT = pathlib.Path(__file__).resolve().parents[3] / ".ci" / "bill-of-materials"


class BillOfMaterials(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        run = subprocess.run([sys.executable, SCRIPT, "build"], check=True, capture_output=True, text=True,
                             env={"PATH": "/usr/bin:/bin", "SOURCE_DATE_EPOCH": "1700000000"})
        cls.text = run.stdout
        cls.bill = json.loads(run.stdout)

    def test_document_has_the_fields_that_spdx_requires(self):
        for field in ("spdxVersion", "dataLicense", "SPDXID", "name", "documentNamespace", "creationInfo"):
            self.assertIn(field, self.bill)
        self.assertEqual(self.bill["creationInfo"]["created"], "2023-11-14T22:13:20Z")
        for package in self.bill["packages"]:
            for field in ("SPDXID", "name", "downloadLocation"):
                self.assertTrue(package[field])
            self.assertRegex(package["SPDXID"], r"^SPDXRef-[A-Za-z0-9.-]+$")

    def test_packages_are_the_installed_ones_each_once(self):
        names = [package["name"] for package in self.bill["packages"]]
        self.assertEqual(len(names), len(set(names)))
        for name in ("libsodium-dev", "libsqlite3-0", "libeigen3-dev", "libc6"):
            version = subprocess.run(["dpkg-query", "-W", "-f", "${Version}\n", name], check=True, capture_output=True,
                                     text=True).stdout.splitlines()[0]
            package = next(package for package in self.bill["packages"] if package["name"] == name)
            self.assertEqual(package["versionInfo"], version)

    def test_every_relationship_leads_to_a_package(self):
        known = {package["SPDXID"] for package in self.bill["packages"]} | {"SPDXRef-DOCUMENT"}
        for relationship in self.bill["relationships"]:
            self.assertIn(relationship["spdxElementId"], known)
            self.assertIn(relationship["relatedSpdxElement"], known)

    def test_a_group_that_is_not_there_is_named(self):
        run = subprocess.run([sys.executable, SCRIPT, "nothing"], capture_output=True, text=True)
        self.assertNotEqual(run.returncode, 0)
        self.assertIn("nothing", run.stderr)


unittest.main()
