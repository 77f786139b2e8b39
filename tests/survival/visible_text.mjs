// The text that a reader of a page sees and copies: tags gone, entities resolved, white space run
// together but in <pre>, and a line break where a block ends.

import {parseFragment} from 'parse5';

const blocks = new Set(('address article aside blockquote dd details div dl dt fieldset figure footer form h1 h2 h3 h4 ' +
    'h5 h6 header hr li main nav ol p pre section summary table tr ul').split(' '));
const unseen = new Set(['script', 'style', 'template', 'head', 'title']);

export function visibleText(html) {
    let text = '';
    const breakLine = () => { if (text && !text.endsWith('\n')) text = text.replace(/ $/, '') + '\n'; };
    const visit = (node, keepsSpace) => {
        if (node.nodeName === '#text') {
            const seen = keepsSpace ? node.value : node.value.replace(/[ \t\r\n\f]+/g, ' ');
            text += !keepsSpace && /(^|\s)$/.test(text) ? seen.replace(/^ /, '') : seen;
            return;
        }
        if (unseen.has(node.nodeName)) return;
        if (node.nodeName === 'br') text += '\n';
        if (node.nodeName === 'img') text += node.attrs.find(attribute => attribute.name === 'alt')?.value ?? '';
        const isBlock = blocks.has(node.nodeName);
        if (isBlock) breakLine();
        for (const child of node.childNodes ?? []) visit(child, keepsSpace || node.nodeName === 'pre');
        if (node.nodeName === 'td' || node.nodeName === 'th') text += '\t';
        if (isBlock) breakLine();
    };
    visit(parseFragment(html), false);
    return text;
}
