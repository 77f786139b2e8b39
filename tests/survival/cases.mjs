// The codes to be tried: the textures of the sample library, and its pictures converted to several
// sizes, so that codes of two lines and of hundreds are among them.

import {execFileSync} from 'node:child_process';
import {readFileSync} from 'node:fs';
import {join} from 'node:path';

// How a code is made: options of `pantile code`, which texts of its answer are pasted, and where: posts
// made for a place stand there as they are, or are quoted.
const posted = ['bare', 'quote', 'reply in reply'];
const post = place => ({
    name: `for ${place}`, options: ['--for', place, '--limit', '1000'], texts: answer => answer.parts,
    reads: {chat: 'markdown'}[place] ?? place, placements: posted});
export const forms = [
    {name: 'whole', options: [], texts: answer => [answer.code]},
    {name: 'parts', options: ['--limit', '500'], texts: answer => answer.parts},
    ...['chat', 'markdown', 'bbcode', 'plain'].map(post),
];

const canvases = [
    {side: 8, colours: 4},
    {side: 24, colours: 12},
    {side: 48, colours: 16},
    {side: 96, colours: 32},
    {side: 128, colours: 64},
];
const dithers = ['none', 'floyd-steinberg'];
const words = ['--author', 'Tidewrack demo', '--licence', 'CC0-1.0'];

/// What a code has to bring back.
export const carried = texture => JSON.stringify(
    ['title', 'author', 'licence', 'tags', 'palette', 'transparent', 'cells'].map(field => texture[field]));

function evenly(list, count) {
    if (count >= list.length) return list;
    return Array.from({length: count}, (_, i) => list[Math.floor((i + 0.5) * list.length / count)]);
}

/// A list of {title, texts, wanted} for a form, `count` of them at most, from the shortest code to the longest.
export function makeCases(program, samples, folder, form, count) {
    const library = join(folder, `${form.name.replace(' ', '-')}.db`);
    const pantile = (...args) => JSON.parse(execFileSync(
        program, ['--library', library, '--json', ...args], {encoding: 'utf8', maxBuffer: 1 << 30, stdio: 'pipe'}));
    const rows = readFileSync(join(samples, 'textures', 'contents.csv'), 'utf8').trim().split('\n').slice(1);
    for (const row of rows) {
        const [file, title, tags] = row.split(',');
        const tagOptions = tags.split(' ').flatMap(tag => ['--tag', tag]);
        pantile('add', join(samples, 'textures', file), '--fit', 'exact', '--title', title, ...tagOptions, ...words);
    }
    for (const {side, colours} of canvases) {
        pantile('canvas', 'add', `c${side}`, '--width', `${side}`, '--height', `${side}`, '--colours', `${colours}`);
        for (const dither of dithers) {
            pantile('add', join(samples, 'pictures'), '--canvas', `c${side}`, '--dither', dither, ...words);
        }
    }
    const cases = pantile('code', 'all', ...form.options).codes.map(answer => {
        const texture = pantile('show', `${answer.id}`);
        return {title: texture.title, texts: form.texts(answer), wanted: carried(texture)};
    });
    const length = one => one.texts.join('').length;
    return evenly(cases.sort((a, b) => length(a) - length(b)), count);
}
