// Everything that lays a work sheet out on the page, fetched together when the first plan has been drawn.
export { paperOf } from '../../paper/paperOf'
export { quickPaper } from '../../paper/quickPaper'
export { paperStands, putPaper, takePaper } from './printed'
