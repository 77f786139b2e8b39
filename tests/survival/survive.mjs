// Puts each code through each engine and placement, has the program read what arrives (the HTML and the
// text that it shows), and prints how many textures came back whole.
// usage: node survive.mjs PROGRAM SAMPLE-LIBRARY CASES

import {spawnSync} from 'node:child_process';
import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {carried, forms, makeCases} from './cases.mjs';
import {engines} from './engines.mjs';
import {placementNames, placements} from './placements.mjs';
import {visibleText} from './visible_text.mjs';

// Alarms that stand beside textures which came back whole, and why they are borne.
const known = [
    {alarm: /^damaged: .* all letters of the code have become small ones/, engine: /^showdown/, placement: 'heading',
        why: 'showdown repeats a heading in small letters as its id, and no tag above 4096 bytes is passed over'},
];
const mostLossesShown = 20;
const [program, samples, count] = process.argv.slice(2);
const wantedCases = Number(count);
if (!samples || !(Number.isInteger(wantedCases) && wantedCases > 0)) {
    console.error('usage: node survive.mjs PROGRAM SAMPLE-LIBRARY CASES');
    process.exit(2);
}

const folder = mkdtempSync(join(tmpdir(), 'survival-'));
process.on('exit', () => rmSync(folder, {recursive: true}));

function read(text) {
    const ran = spawnSync(program, ['--library', join(folder, 'none.db'), '--json', 'read', '-'],
        {input: text, encoding: 'utf8', maxBuffer: 1 << 30});
    if (ran.error) throw ran.error;
    const answer = JSON.parse(ran.stdout);
    if (!answer.textures) throw new Error(`read failed: ${ran.stdout}${ran.stderr}`);
    return answer;
}

/// One reading of all the messages: the cases that did not come back, and what was found beside them.
function losses(messages, cases) {
    const answer = read(messages.join('\n\n'));
    const found = answer.textures.map(carried);
    const wanted = new Set(cases.map(one => one.wanted));
    return {
        lost: cases.filter(one => !found.includes(one.wanted)),
        others: [
            ...answer.damaged.map(damage => `damaged: ${damage.where}: ${damage.reason}`),
            ...answer.textures.filter(one => !wanted.has(carried(one))).map(one => `changed: ${one.title}`)],
    };
}

let bad = 0;
let borne = 0;
const report = [];
for (const form of forms) {
    const cases = makeCases(program, samples, folder, form, wantedCases);
    const letters = cases.map(one => one.texts.join('').length);
    console.log(`Codes, ${form.name}: ${cases.length}, of ${letters[0]} to ${letters.at(-1)} characters`);
    const names = form.placements ?? placementNames;
    console.log(`\n| engine | ${names.join(' | ')} |\n| --- |${' ---: |'.repeat(names.length)}`);
    for (const engine of engines.filter(one => !form.reads || one.reads === form.reads)) {
        const cells = names.map(name => {
            const place = placements[engine.reads][name];
            if (!place) return '';
            const arrived = cases.flatMap(one => one.texts.map(text => engine.render(place(text))));
            const readings = engine.asText ? [arrived] : [arrived, arrived.map(visibleText)];
            let whole = 0;
            readings.forEach((messages, i) => {
                const {lost, others} = losses(messages, cases);
                whole += cases.length - lost.length;
                const isKnown = other => known.some(one =>
                    one.alarm.test(other) && one.engine.test(engine.name) && one.placement === name);
                const alarms = others.filter(other => !isKnown(other));
                borne += others.length - alarms.length;
                bad += lost.length + alarms.length;
                const where = `${form.name}, ${engine.name}, ${name}, ${engine.asText || i ? 'as text' : 'as HTML'}`;
                for (const one of lost) report.push(`${where}: '${one.title}' is lost`);
                for (const other of alarms) report.push(`${where}: ${other}`);
            });
            return String(Math.floor(100 * whole / (readings.length * cases.length)));
        });
        console.log(`| ${engine.name} | ${cells.join(' | ')} |`);
    }
    console.log();
}
for (const line of report.slice(0, mostLossesShown)) console.log(line);
if (report.length > mostLossesShown) console.log(`... and ${report.length - mostLossesShown} more`);
if (borne) console.log(`${borne} known alarms: ${known.map(one => one.why).join('; ')}.`);
console.log(bad === 0 ? 'Every texture came back whole.' : `${bad} losses.`);
process.exit(bad === 0 ? 0 : 1);
