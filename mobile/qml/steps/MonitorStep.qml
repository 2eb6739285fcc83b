// SPDX-License-Identifier: GPL-3.0-or-later
// What the machine's own monitor answered: a press for each answer, its own words where somebody wants to keep them.
import QtQuick
import Hingepin

StepPanel {
    id: panel
    readonly property var answers: Job.view.answers
    actions: answers.map(answer => ({
                text: answer.text,
                kind: answer.good ? "main" : "plain",
                run: () => Job.answer(answer.id, words.text)
            }))
    Field {
        id: words
        label: qsTr("In the monitor's own words, if you like")
    }
}
