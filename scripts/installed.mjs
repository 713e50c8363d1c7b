/** After every `npm ci`, by whomever: a Node that fits stands before the one at hand where that is too old. */
import { bringNode, linkNode } from '../runtime/node.mjs';
import { npmCi } from './npm-ci.mjs';

if (await bringNode(npmCi)) linkNode();
