// SPDX-License-Identifier: GPL-3.0-or-later
// How the scale of a unit with one attachment went over the months: its zero, its span, the errors of its proofs.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string unit: ""
    property string attachment: ""
    readonly property var history: Yard.history
    readonly property var taught: history.filter(point => point.calibration).map(point => point.time)
    readonly property string massUnit: App.usUnits ? "lb" : "kg"
    title: qsTr("%1 with %2").arg(unit).arg(attachment)
    Component.onCompleted: Yard.readHistory(unit, attachment)
    Connections {
        target: App
        function onStoreChanged() {
            Yard.readHistory(page.unit, page.attachment);
        }
    }
    function pointsOf(key: string, limits: var): var {
        return history.filter(point => point[key] !== undefined).map(point => Object.assign({
                time: point.time,
                value: point[key]
            }, limits(point)));
    }
    BodyText {
        visible: zero.points.length + span.points.length + errors.points.length === 0
        Layout.fillWidth: true
        text: qsTr("None yet.")
    }
    HistoryChart {
        id: zero
        title: qsTr("Zero")
        note: qsTr("What it showed with an empty bucket, as found, in %1").arg(page.massUnit)
        unit: page.massUnit
        points: page.pointsOf("zero", point => point.zeroHigh === undefined ? {} : {
                low: point.zeroLow,
                high: point.zeroHigh
            })
        taught: page.taught
    }
    HistoryChart {
        id: span
        title: qsTr("Span")
        note: qsTr("What it showed of a known mass less its zero, in % of that mass")
        unit: "%"
        decimals: 2
        points: page.pointsOf("span", point => ({})).map(point => Object.assign(point, {
                value: point.value * 100
            }))
        taught: page.taught
    }
    HistoryChart {
        id: errors
        title: qsTr("Errors of the proofs")
        note: qsTr("In % of the known mass")
        unit: "%"
        decimals: 2
        points: page.pointsOf("error", point => point.limit === undefined ? {} : {
                low: -point.limit,
                high: point.limit
            })
        taught: page.taught
    }
}
