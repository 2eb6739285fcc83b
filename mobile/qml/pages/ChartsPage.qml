// SPDX-License-Identifier: GPL-3.0-or-later
// The charts of a record, or of the job that runs.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string record: ""
    readonly property var proof: Charts.proof
    title: qsTr("Charts")
    Component.onCompleted: record.length > 0 ? Charts.readRecord(record) : Charts.readJob()
    BodyText {
        visible: Charts.ready && Charts.passes.length === 0 && proof.errors === undefined
        Layout.fillWidth: true
        text: qsTr("Nothing was logged or proved that a chart could show.")
    }
    Loader {
        active: Charts.passes.length > 0
        visible: active
        Layout.fillWidth: true
        sourceComponent: LiftChart {}
    }
    Loader {
        active: Charts.residuals.length > 0
        visible: active
        Layout.fillWidth: true
        sourceComponent: ResidualChart {}
    }
    Loader {
        active: page.proof.errors !== undefined
        visible: active
        Layout.fillWidth: true
        sourceComponent: ProofChart {}
    }
}
