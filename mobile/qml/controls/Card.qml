// SPDX-License-Identifier: GPL-3.0-or-later
// A framed group; what is put into it stands in a column.
import QtQuick
import QtQuick.Layouts
import Hingepin

Rectangle {
    default property alias content: column.data
    property color edge: Theme.line
    implicitHeight: column.implicitHeight + 2 * Theme.gap
    Layout.fillWidth: true
    color: Theme.surface
    border.width: Theme.lineWidth
    border.color: edge
    radius: Theme.radius
    ColumnLayout {
        id: column
        anchors.fill: parent
        anchors.margins: Theme.gap
        spacing: Theme.gap / 2
    }
}
