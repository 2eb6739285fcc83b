// SPDX-License-Identifier: GPL-3.0-or-later
// With the key that is open, or by hand on the glass; absence and refusal are written down.
import QtQuick
import QtQuick.Layouts
import Hingepin

StepPanel {
    id: panel
    readonly property bool onGlass: Job.view.onGlass
    readonly property var answers: Job.view.answers
    readonly property bool mayBeAbsent: answers.some(answer => answer.id === "absent")
    actions: {
        const list = [
            {
                text: qsTr("Sign"),
                kind: "main",
                enabled: !panel.onGlass || !glass.isEmpty,
                run: () => panel.onGlass ? Job.answerWithBytes("signed", glass.svg(), "signature.svg") : Job.answer("signed")
            }
        ];
        if (onGlass)
            list.push({
                text: qsTr("Clear the glass"),
                enabled: !glass.isEmpty,
                run: () => glass.clear()
            });
        if (onGlass && mayBeAbsent)
            list.push({
                text: qsTr("Absent"),
                run: () => Job.answer("absent")
            }, {
                text: qsTr("Refused"),
                run: () => Job.answer("refused")
            });
        return list;
    }
    SignaturePad {
        id: glass
        parent: panel.tray
        width: parent?.width ?? 0
        height: panel.onGlass ? implicitHeight : 0
        visible: panel.onGlass
    }
    BodyText {
        visible: !panel.onGlass
        Layout.fillWidth: true
        text: qsTr("You sign as %1, %2, with your key on this phone.").arg(App.person).arg(App.roleName(App.role))
    }
}
