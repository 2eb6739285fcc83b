// SPDX-License-Identifier: GPL-3.0-or-later
// The calibration certificate of a record: its language, what no record holds, and the files it is saved as.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    readonly property var languages: App.languages
    property string record: ""
    property string language: App.language
    readonly property bool isCountry: /^([A-Z]{2})?$/.test(country.text.trim())
    title: qsTr("Calibration certificate")
    Component.onCompleted: Exporter.clear()
    function save(kind: string) {
        Exporter.certificate(record, kind, {
            language: language,
            laboratory: laboratory.text,
            customer: customer.text,
            place: place.text,
            country: country.text,
            references: references.text
        });
    }
    Choice {
        label: qsTr("Language")
        options: page.languages.map(tag => ({
                    value: tag,
                    text: App.languageName(tag)
                }))
        value: page.language
        onChosen: value => page.language = value
    }
    BodyText {
        Layout.fillWidth: true
        color: Theme.faintInk
        font.pixelSize: Theme.smallText
        text: qsTr("What you state here is not part of the sealed record, and the certificate says so. It may stay empty.")
    }
    Field {
        id: laboratory
        label: qsTr("Calibrated by: name and address")
    }
    Field {
        id: customer
        label: qsTr("For whom: name and address")
    }
    Field {
        id: place
        label: qsTr("Where it was done")
    }
    Field {
        id: country
        label: qsTr("Country: two capital letters")
        problem: page.isCountry ? "" : qsTr("Two capital letters (ISO 3166-1), as in DE")
    }
    Field {
        id: references
        label: qsTr("Certificates of the test masses or of the truck scale")
    }
    Choice {
        label: qsTr("Paper")
        options: [
            {
                value: false,
                text: "A4"
            },
            {
                value: true,
                text: "Letter"
            }
        ]
        value: Exporter.letter
        onChosen: value => Exporter.letter = value
    }
    Press {
        Layout.fillWidth: true
        kind: "main"
        text: qsTr("Save as a PDF")
        enabled: page.isCountry
        onPressedFully: page.save("pdf")
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Save as a web page")
        note: qsTr("One HTML file that needs nothing beside it")
        enabled: page.isCountry
        onPressedFully: page.save("html")
    }
    Press {
        Layout.fillWidth: true
        text: qsTr("Save for programs")
        note: qsTr("A Digital Calibration Certificate (DCC, XML)")
        enabled: page.isCountry
        onPressedFully: page.save("dcc")
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        wrapMode: Text.WrapAnywhere
        color: Theme.good
        text: Exporter.saved.length > 0 ? "✓ " + qsTr("Saved: %1").arg(Exporter.saved) : ""
    }
}
