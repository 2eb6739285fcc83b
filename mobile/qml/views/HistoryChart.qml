// SPDX-License-Identifier: GPL-3.0-or-later
// Zero and proof error of a unit over the months, with the limit; the same in words for who can't see it.
import QtCharts
import QtQuick
import QtQuick.Layouts
import Hingepin

ColumnLayout {
    id: view
    readonly property var points: Yard.history
    readonly property var errors: points.filter(point => point.error !== undefined)
    visible: errors.length > 1
    Layout.fillWidth: true
    spacing: 4
    function fill() {
        errorLine.clear();
        let most = 1;
        for (const point of errors) {
            errorLine.append(point.time, point.error);
            most = Math.max(most, Math.abs(point.error) * 1.2, (point.limit ?? 0) * 1.2);
        }
        if (errors.length > 0) {
            time.min = new Date(errors[0].time);
            time.max = new Date(errors[errors.length - 1].time);
            const limit = errors[errors.length - 1].limit ?? 0;
            high.clear();
            low.clear();
            if (limit > 0) {
                for (const at of [errors[0].time, errors[errors.length - 1].time]) {
                    high.append(at, limit);
                    low.append(at, -limit);
                }
            }
        }
        error.min = -most;
        error.max = most;
    }
    onErrorsChanged: fill()
    Heading {
        Layout.fillWidth: true
        text: qsTr("Error of the proofs, %")
    }
    ChartView {
        Layout.fillWidth: true
        implicitHeight: 220
        legend.visible: false
        antialiasing: true
        backgroundColor: Theme.surface
        margins.top: 2
        margins.bottom: 2
        margins.left: 2
        margins.right: 2
        DateTimeAxis {
            id: time
            format: "MM/yy"
            tickCount: 4
            labelsColor: Theme.ink
            gridLineColor: Theme.line
        }
        ValueAxis {
            id: error
            labelFormat: "%.1f"
            labelsColor: Theme.ink
            gridLineColor: Theme.line
        }
        LineSeries {
            id: errorLine
            axisX: time
            axisY: error
            color: Theme.accent
            width: 3
            pointsVisible: true
        }
        LineSeries {
            id: high
            axisX: time
            axisY: error
            color: Theme.bad
            style: Qt.DashLine
        }
        LineSeries {
            id: low
            axisX: time
            axisY: error
            color: Theme.bad
            style: Qt.DashLine
        }
    }
    BodyText {
        visible: view.errors.length > 0
        Layout.fillWidth: true
        color: Theme.faintInk
        font.pixelSize: Theme.smallText
        text: view.errors.length > 0 ? qsTr("Last proof %1: error %2 %").arg(App.date(view.errors[view.errors.length - 1].time)).arg(Number(view.errors[view.errors.length - 1].error).toLocaleString(Qt.locale(App.language), "f", 2)) : ""
    }
}
